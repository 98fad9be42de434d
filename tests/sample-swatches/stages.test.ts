import { readFile, readdir, stat } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { drawStages } from '../../sample-swatches/draw-stages.ts';
import { readStages } from '../../sample-swatches/read-stages.ts';
import { shownPhoto } from '../../sample-swatches/shown-photo.ts';
import { lightAt } from '../../server/photo/light.ts';

const here = (name: string): string =>
  fileURLToPath(new URL(`../../sample-swatches/${name}`, import.meta.url));

/** A picture as a few grey levels, so that fonts and the last digit of a processor do not count. */
function small(file: Uint8Array): Promise<Buffer> {
  return sharp(file).flatten().removeAlpha().resize(48, 48, { fit: 'fill' }).raw().toBuffer();
}

describe('the pictures of the stages', async () => {
  const { file, sheetMillimetres, follow, printed } = await shownPhoto(here('truth.json'));
  const stages = await readStages(await readFile(here(file)), sheetMillimetres, follow, printed);
  const drawn = await drawStages(stages);

  it('are those that the code gives today (else run `npm run stages`), and small', async () => {
    expect((await readdir(here('stages'))).sort()).toEqual(Object.keys(drawn).sort());
    let bytes = 0;
    for (const [name, picture] of Object.entries(drawn)) {
      const kept = await readFile(here(`stages/${name}`));
      const [now, before] = [await small(picture), await small(kept)];
      const apart = now.reduce((sum, value, at) => sum + Math.abs(value - before[at]!), 0);
      expect(apart / now.length, name).toBeLessThan(6);
      bytes += (await stat(here(`stages/${name}`))).size;
    }
    expect(bytes).toBeLessThan(600e3);
  });

  it('are all shown to developers', async () => {
    const guide = await readFile(here('../DEVELOPERS.md'), 'utf8');
    for (const name of Object.keys(drawn))
      expect(guide).toContain(`(sample-swatches/stages/${name})`);
  });

  it('follow the sheet that is meant: each printed colour is read, within twice its stated error', () => {
    expect(stages.colours.length).toBe(printed.length);
    expect(new Set(stages.colours.map(({ trueHex }) => trueHex)).size).toBe(printed.length);
    for (const { name, stated, made } of stages.colours)
      expect(made, name).toBeLessThan(2 * stated);
  });

  it('show a light that, taken out, leaves little on the bare table but its own clouds', () => {
    const { preview, table, field } = stages;
    const lit = rows(preview.height).map((row) => tableLight(preview, table, row, () => 1));
    const even = rows(preview.height).map((row) =>
      tableLight(preview, table, row, (x, y) => lightAt(field, x, y)[1]),
    );
    expect(spreadOf(lit)).toBeGreaterThan(0.1);
    // The light is read off the sheets too, so what is uneven in the desk itself stays in it.
    expect(spreadOf(even)).toBeLessThan(spreadOf(lit) / 3);
  });
});

type Rows = readonly [from: number, to: number];

/** Four bands of the photo. */
function rows(height: number): Rows[] {
  return [0, 1, 2, 3].map((band) => [
    Math.floor((band * height) / 4),
    Math.floor(((band + 1) * height) / 4),
  ]);
}

/** Mean green light of the bare table in some rows, divided by a light; sRGB's curve (IEC 61966-2-1) near enough as 2.2. */
function tableLight(
  { width, rgb }: { width: number; rgb: Uint8Array },
  table: Uint8Array,
  [from, to]: Rows,
  light: (x: number, y: number) => number,
): number {
  let [sum, count] = [0, 0];
  for (let y = from; y < to; y++)
    for (let x = 0; x < width; x++) {
      const at = y * width + x;
      if (table[at] !== 1) continue;
      sum += (rgb[3 * at + 1]! / 255) ** 2.2 / light(x, y);
      count++;
    }
  return sum / count;
}

function spreadOf(values: readonly number[]): number {
  return Math.log(Math.max(...values) / Math.min(...values));
}
