import { describe, expect, it } from 'vitest';
import { makePad } from '../../sample-swatches/pad/make-pad.ts';
import { renderPhoto } from '../../sample-swatches/render-photo.ts';
import { makeScene, squaresScene } from '../../sample-swatches/scene/make-scene.ts';
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { readSides, readSupplies } from '../../server/from-photo-to-guide.ts';
import type { PhotoOfSupplies } from '../../server/from-photo-to-guide.ts';
import type { PhotoPoint } from '../../server/geometry/points.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { matchQuads } from '../benchmark/photos-match.ts';

type Rendered = Awaited<ReturnType<typeof renderPhoto>>;

const STOCK: readonly Lab[] = [
  { l: 62, a: 40, b: 35 },
  { l: 35, a: -15, b: -20 },
  { l: 85, a: 2, b: 15 },
  { l: 55, a: -5, b: -25 },
  { l: 45, a: 30, b: -10 },
  { l: 70, a: 15, b: 50 },
];

/** The papers of the pad beside the scraps, whose colours they define. */
async function scrapColours(seed: number): Promise<readonly Lab[]> {
  const sides = makePad(seed)
    .sheets.slice(0, 1)
    .map(({ front }) => front);
  const photo = await renderPhoto(makeScene(seed, 'normal', sides, { pixels: 1000, chips: true }));
  const chips = middlesOf(photo);
  const read = await readSides(photo.jpeg, parseSize('6 x 6 in'), { chips });
  expect(read.chips.tie).toBe('first');
  return read.chips.scraps.map(({ lab }) => lab);
}

/** The same cardstock beside the same scraps by a window; and in lamplight, by a camera that bends the tones. */
function inRoom(room: 'window' | 'lamp', seed: number): Promise<Rendered> {
  const colours = STOCK.map((lab, at) => ({ name: `${at}`, lab }));
  const scene = squaresScene(seed + 400, 'normal', colours, { pixels: 1000, chips: true });
  if (room === 'window') return renderPhoto(scene);
  const light = { ...scene.light, colour: [1.15, 0.95, 0.5] as const };
  return renderPhoto({ ...scene, light, toneCurve: 0.8 });
}

function middlesOf({ truth }: Rendered): PhotoPoint[] {
  return truth.chips.map(({ corners: [p, , r] }) => ({ x: (p.x + r.x) / 2, y: (p.y + r.y) / 2 }));
}

/** The colours of the squares, in the order in which they were laid. */
function coloursIn(photo: Rendered, { supplies }: PhotoOfSupplies): Lab[] {
  const pairs = matchQuads(supplies, photo.truth.squares, 0.5);
  return [...pairs]
    .sort((p, q) => Number(p.truth.name) - Number(q.truth.name))
    .map(({ found }) => found.lab);
}

function apart([p, q]: readonly (readonly Lab[])[]): number {
  expect(p).toHaveLength(STOCK.length);
  return Math.hypot(...p!.map((lab, at) => difference(lab, q![at]!))) / Math.sqrt(STOCK.length);
}

describe('a few squares beside more scraps', () => {
  it.each([2, 3])('%i squares are found, and no scrap is taken for one', async (count) => {
    const colours = STOCK.slice(0, count).map((lab, at) => ({ name: `${at}`, lab }));
    const look = { pixels: 1000, surface: 'grey desk', chips: true } as const;
    const photo = await renderPhoto(squaresScene(403, 'normal', colours, look));
    const { supplies, white } = await readSupplies(photo.jpeg);
    expect(supplies).toHaveLength(count);
    expect(matchQuads(supplies, photo.truth.squares, 0.7)).toHaveLength(count);
    expect(white.kind).toBe('found');
  });
});

describe('the same cardstock photographed in two rooms', () => {
  it('agrees at least twice as well once the scraps of a pad are touched in both', async () => {
    const seed = 3;
    const chipColours = await scrapColours(seed);
    const rooms = [await inRoom('window', seed), await inRoom('lamp', seed)];
    const untied: Lab[][] = [];
    const tied: Lab[][] = [];
    for (const room of rooms) {
      const read = await readSupplies(room.jpeg);
      untied.push(coloursIn(room, read));
      const again = await readSupplies(
        room.jpeg,
        { chips: middlesOf(room), corners: read.supplies.map(({ corners }) => corners) },
        chipColours,
      );
      expect(again.chips.tie).toBe('tied');
      expect(again.supplies.map(({ corners }) => corners)).toEqual(
        read.supplies.map(({ corners }) => corners),
      );
      tied.push(coloursIn(room, again));
    }
    expect(apart(tied)).toBeLessThan(apart(untied) / 2);
  });

  it('a place that was touched by hand is read where it was, beside those that were found', async () => {
    const room = await inRoom('window', 5);
    const read = await readSupplies(room.jpeg);
    const [first] = read.supplies;
    const [p, , r] = first!.corners;
    const at = (x: number, y: number): PhotoPoint => ({
      x: p.x + x * (r.x - p.x),
      y: p.y + y * (r.y - p.y),
    });
    const inside = [at(0.3, 0.3), at(0.6, 0.3), at(0.6, 0.6), at(0.3, 0.6)] as const;
    const corners = [inside, first!.corners];
    const { supplies } = await readSupplies(room.jpeg, { corners });
    expect(supplies).toHaveLength(2);
    expect(supplies[1]).toEqual(first);
    expect(difference(supplies[0]!.lab, first!.lab)).toBeLessThan(1);
  });
});
