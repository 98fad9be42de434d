import { makePad } from '../../sample-swatches/pad/make-pad.ts';
import { patternOf } from '../../sample-swatches/paper/paper-side.ts';
import { renderSide } from '../../sample-swatches/paper/render-side.ts';
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { paletteDistance } from '../../server/colour/palette-distance.ts';
import { readPalette } from '../../server/colour/read-palette.ts';
import { labOfLinear } from '../../server/colour/spaces.ts';
import type { Side } from '../../server/pad/pad.ts';
import { readPattern } from '../../server/pattern/read-pattern.ts';
import { coordination } from '../../server/plan/coordination/coordination.ts';
import { chance } from '../../server/plan/network/local-search.ts';
import type { Figure } from './figure.ts';

/** The tables that were looked at while the weights were set, and those that were not. */
export const TUNED = [1, 2, 3, 4, 5, 6, 7, 8];
export const UNSEEN = [501, 502, 503, 504, 505, 506, 507, 508, 509, 510];

const PIXELS = 240;
const PICKS = 3;
/** One careful photo near a window: what the readings may be off by, in Lab units. */
const CAST = 1.2;

interface Told {
  readonly side: Side;
  readonly story: number;
  readonly sheet: string;
}

/**
 * A blind choice: sides of two or three pads, each printed with a story of its own, lie mixed on the
 * table; for each side its three best partners are picked. How many of them come from its own pad?
 */
export async function blindChoice(
  name: string,
  seeds: readonly number[],
  bar: boolean,
): Promise<Figure[]> {
  const tables: Told[][] = [];
  for (const seed of seeds) tables.push(await tableOf(seed));
  const random = chance(1);
  const own = (rank: (a: Side, b: Side) => number): number => {
    let right = 0;
    let picked = 0;
    for (const table of tables) {
      for (const one of table) {
        const others = table
          .filter(({ sheet }) => sheet !== one.sheet)
          .map((other) => ({ other, score: rank(one.side, other.side) }))
          .sort((a, b) => b.score - a.score)
          .slice(0, PICKS);
        right += others.filter(({ other }) => other.story === one.story).length;
        picked += others.length;
      }
    }
    return (100 * right) / picked;
  };
  const score = own((a, b) => coordination(a, b).score);
  const mean = own((a, b) => -difference(meanOf(a), meanOf(b)));
  const mover = own((a, b) => -paletteDistance(a.palette, b.palette));
  const sides = tables.reduce((sum, table) => sum + table.length, 0);
  const note = `${PICKS} picks for each of ${sides} sides on ${tables.length} mixed tables, seeds ${seeds[0]!} to ${seeds.at(-1)!}`;
  const figure = (what: string, value: number): Figure => ({
    name: `blind choice (${name}): picks from its own story, ${what}`,
    value,
    unit: '%',
    bar: null,
  });
  return [
    {
      ...figure('by coordination', score),
      bar: bar ? { at: 'least', value: Math.max(95, mean, mover) } : null,
      note,
    },
    figure('by palette distance alone', mover),
    figure('by nearest mean colour', mean),
    figure(
      'at random',
      own(() => random()),
    ),
  ];
}

async function tableOf(seed: number): Promise<Told[]> {
  const stories = 2 + (seed % 2);
  const told: Told[] = [];
  for (let story = 0; story < stories; story++) {
    const pad = makePad(10 * seed + story);
    for (const [number, sheet] of pad.sheets.entries()) {
      for (const face of [sheet.front, sheet.back]) {
        const { raster } = await renderSide(face, pad.sheet, PIXELS);
        const lab = labOfLinear(raster.light, 'srgb');
        const image = { width: PIXELS, height: PIXELS, lab };
        const random = chance(seed * 1000 + told.length);
        const cast = [0, 1, 2].map(() => CAST * (random() + random() + random() - 1.5));
        for (let at = 0; at < lab.length; at++) lab[at]! += cast[at % 3]!;
        const error = { noise: 1, field: 0.5, reference: CAST / 2 };
        const palette = readPalette(image, error, 1);
        told.push({
          story,
          sheet: `${story} ${number}`,
          side: {
            id: `${story} ${number} ${face.id} ${patternOf(face)}`,
            photo: 'photo',
            corners: [
              { x: 0, y: 0 },
              { x: 1, y: 0 },
              { x: 1, y: 1 },
              { x: 0, y: 1 },
            ],
            palette,
            pattern: readPattern(image, palette, pad.sheet / PIXELS),
            confidence: 1,
            notes: [],
          },
        });
      }
    }
  }
  return told;
}

function meanOf(side: Side): Lab {
  const sum = (axis: keyof Lab): number =>
    side.palette.colours.reduce((total, colour) => total + colour.share * colour.lab[axis], 0);
  return { l: sum('l'), a: sum('a'), b: sum('b') };
}
