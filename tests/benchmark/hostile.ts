/**
 * Hostile pictures: 10,000 damaged ones, and a collection of malformed files where one lies beside the project.
 * Each must end in a reading or in words, within its time, and the service goes on. Loopback only.
 *
 *   npm run bench hostile          npx tsx tests/benchmark/hostile.ts --count 300
 */
import { alone, numberAfter } from './alone.ts';
import type { Figure, Topic } from './figure.ts';
import { collectionFigures } from './hostile-collection.ts';
import { mutationFigures } from './hostile-mutations.ts';
import { inFolder } from './running-service.ts';

export const hostile: Topic = async () => {
  const count = numberAfter('--count') ?? 10_000;
  const collected: readonly Figure[] = await inFolder(collectionFigures);
  return [...collected, ...(await inFolder((folder) => mutationFigures(folder, count)))];
};

await alone(import.meta.url, hostile);
