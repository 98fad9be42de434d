import { fileURLToPath } from 'node:url';
import { misses } from './figure.ts';
import type { Topic } from './figure.ts';

/** Runs a topic whose file was called by itself: prints its figures, ends with 1 when a bar is missed. */
export async function alone(file: string, topic: Topic): Promise<void> {
  if (process.argv[1] !== fileURLToPath(file)) return;
  const figures = await topic();
  for (const { name, value, unit, bar, note } of figures)
    console.log(
      `${name}: ${value} ${unit}${bar === null ? '' : ` (bar: at ${bar.at} ${bar.value})`}  ${note ?? ''}`,
    );
  process.exit(figures.some(misses) ? 1 : 0);
}

/** The number behind a word of the command line. */
export function numberAfter(word: string): number | null {
  const at = process.argv.indexOf(word);
  return at < 0 ? null : Number(process.argv[at + 1]);
}
