/** npm run samples: draws the papers, takes their pictures, writes them with their truth beside this file. */
import { writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { demo, shoots } from './shoots.ts';
import { renderPhoto } from './render-photo.ts';
import { legible } from './truth-file.ts';
import type { TruthFile } from './truth-file.ts';

const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

const ABOUT =
  'Rendered by `npm run samples`, not photographs of real papers. Corners: pixels of the photo, clockwise from the own top left. Colours: CIELAB under D65, as they would be measured on the paper.';

const photos: TruthFile['photos'][number][] = [];
for (const { scene, ...about } of shoots()) {
  const { jpeg, truth } = await renderPhoto(scene);
  await writeFile(here(about.file), jpeg);
  photos.push({ ...about, ...truth });
  console.log(`${about.file}  ${Math.round(jpeg.length / 1024)} KiB`);
}
await writeFile(here('truth.json'), legible({ about: ABOUT, sheetMillimetres: 152.4, photos }));
await writeFile(here('demo.json'), `${JSON.stringify(demo, null, 2)}\n`);
