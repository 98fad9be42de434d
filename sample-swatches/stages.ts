/** npm run stages: reads one sample photo step by step and draws what each step gives, for DEVELOPERS.md. */
import { readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { drawStages } from './draw-stages.ts';
import { readStages } from './read-stages.ts';
import { shownPhoto } from './shown-photo.ts';

const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

const { file, sheetMillimetres, follow, printed } = await shownPhoto(here('truth.json'));
const stages = await readStages(await readFile(here(file)), sheetMillimetres, follow, printed);
for (const [name, bytes] of Object.entries(await drawStages(stages))) {
  await writeFile(here(`stages/${name}`), bytes);
  console.log(`stages/${name}  ${Math.round(bytes.length / 1024)} KiB`);
}
