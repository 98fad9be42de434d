import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readSides } from '../../server/from-photo-to-guide.ts';
import { INCH, units } from '../../server/lengths/length.ts';
import { patternSetsOf } from '../../server/pad/pattern-sets.ts';
import type { Side } from '../../server/pad/pad.ts';
import type { TruthFile } from '../../sample-swatches/truth-file.ts';
import { matchQuads } from '../benchmark/photos-match.ts';

const SAMPLES = new URL('../../sample-swatches/', import.meta.url);
const SIX_INCHES = { width: units(6 * INCH), height: units(6 * INCH) };

/** Truth: how the photos were rendered. Two pads in one heap hold ruled lines, stripes and zigzags that fit each other by chance. */
test('the sample photos of two pads give their pattern sets and no others', async () => {
  const truth = JSON.parse(readFileSync(new URL('truth.json', SAMPLES), 'utf8')) as TruthFile;
  const sides: Pick<Side, 'id' | 'pattern'>[] = [];
  const patternOf = new Map<string, string>();
  for (const pad of ['nightjar', 'windfall'])
    for (const face of ['front', 'back']) {
      const file = `${pad}-${face}.jpg`;
      const { sheets } = truth.photos.find((photo) => photo.file === file)!;
      const read = await readSides(readFileSync(new URL(file, SAMPLES)), SIX_INCHES);
      for (const pair of matchQuads(read.sides, sheets, 0.9)) {
        const id = `${file} ${sides.length}`;
        sides.push({ id, pattern: pair.found.pattern });
        patternOf.set(id, pair.truth.pattern);
      }
    }
  expect(sides).toHaveLength(24);
  const sets = patternSetsOf(sides).map((set) => set.map((id) => patternOf.get(id)!));
  const counted = [...patternOf.values()].filter((one, at, all) => all.indexOf(one) !== at);
  expect(sets.map(([one]) => one).sort()).toEqual([...new Set(counted)].sort());
  for (const [one, ...others] of sets) expect(others.every((other) => other === one)).toBe(true);
});
