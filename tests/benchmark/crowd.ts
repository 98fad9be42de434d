/**
 * Fifty people at once, each with a photo of 12 megapixels, and the event loop while photos are read and while each way is asked. Loopback only.
 *
 *   npm run bench crowd            npx tsx tests/benchmark/crowd.ts --people 6
 */
import { alone, numberAfter } from './alone.ts';
import { loadFigures } from './crowd-load.ts';
import { loopFigures } from './crowd-loop.ts';
import { routeFigures } from './crowd-routes.ts';
import type { Topic } from './figure.ts';
import { inFolder, samplePhoto } from './running-service.ts';

export const crowd: Topic = async () => {
  const people = numberAfter('--people') ?? 50;
  const photo = await samplePhoto();
  const loop = await inFolder((folder) => loopFigures(folder, photo));
  const ways = await inFolder((folder) => routeFigures(folder));
  return [...loop, ...ways, ...(await inFolder((folder) => loadFigures(folder, photo, people)))];
};

await alone(import.meta.url, crowd);
