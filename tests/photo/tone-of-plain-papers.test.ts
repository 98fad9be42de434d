import { expect, test } from 'vitest';
import { linearOfByte } from '../../server/colour/curves.ts';
import { bytesOfLinear } from '../../server/colour/spaces.ts';
import type { Quad } from '../../server/geometry/points.ts';
import { evenLight } from '../../server/photo/light.ts';
import type { LightField } from '../../server/photo/light.ts';
import { straightBytes } from '../../server/photo/tone-curve.ts';
import { toneTold } from '../../server/photo/tone-told.ts';
import { chanceOf, normal } from '../colour/drawn.ts';

const [WIDTH, HEIGHT, FALL, TABLE] = [400, 300, 0.9, 0.55];
/** Sheets of one colour each, from dark to light. */
const PAPERS = [0.04, 0.1, 0.2, 0.7];

const cornersOf = (index: number): Quad<'photo'> => {
  const [x, y] = [15 + 195 * (index % 2), 10 + 145 * Math.floor(index / 2)];
  return [
    { x, y },
    { x: x + 175, y },
    { x: x + 175, y: y + 135 },
    { x, y: y + 135 },
  ];
};

/** Seen in a file bent so strongly: encoded values by the curve that `straightBytes` undoes. */
function bent(linear: Float32Array, strength: number): Uint8Array {
  const table = straightBytes(strength);
  const curve = Uint8Array.from({ length: 256 }, (_, byte) => {
    const found = table.findIndex((value) => value >= byte - 0.5);
    return found < 0 ? 255 : found;
  });
  return Uint8Array.from(bytesOfLinear(linear), (byte) => curve[byte]!);
}

const lightAt = (x: number): number => Math.exp((-FALL * x) / WIDTH);

function lit(strength: number): Uint8Array {
  const chance = chanceOf(5);
  const light = new Float32Array(3 * WIDTH * HEIGHT);
  for (let y = 0, at = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) {
      const paper = PAPERS[(y < 150 ? 0 : 2) + (x < 200 ? 0 : 1)]!;
      for (let k = 0; k < 3; k++, at++)
        light[at] = paper * lightAt(x) * (1 + 0.02 * normal(chance));
    }
  return bent(light, strength);
}

/** The light as the bare table, lighter than most papers, tells it in that file. */
function tableLight(strength: number): LightField {
  const ends = bent(
    Float32Array.of(
      ...[0, WIDTH].flatMap((x) => Array.from({ length: 3 }, () => TABLE * lightAt(x))),
    ),
    strength,
  );
  const [left, right] = [Math.log(linearOfByte[ends[0]!]!), Math.log(linearOfByte[ends[3]!]!)];
  const of = (): Float64Array =>
    Float64Array.of((left + right) / 2, (right - left) / 2, 0, 0, 0, 0);
  return {
    of: [of(), of(), of()],
    range: 2.4,
    error: 0.02,
    tint: 0.01,
    pressed: false,
    width: WIDTH,
    height: HEIGHT,
  };
}

test.each([0, 0.8])('beside a lit table plain papers tell a bend of %d', (strength) => {
  const picture = { width: WIDTH, height: HEIGHT, rgb: lit(strength), primaries: 'srgb' as const };
  const told = toneTold(
    picture,
    PAPERS.map((_, index) => cornersOf(index)),
    tableLight(strength),
  );
  expect(told).not.toBeNull();
  expect(Math.abs(told!.strength - strength)).toBeLessThan(0.25);
});

test('alone, without a table whose light is known, they tell nothing', () => {
  const picture = { width: WIDTH, height: HEIGHT, rgb: lit(0.8), primaries: 'srgb' as const };
  const papers = PAPERS.map((_, index) => cornersOf(index));
  expect(toneTold(picture, papers, evenLight(picture))).toBeNull();
});
