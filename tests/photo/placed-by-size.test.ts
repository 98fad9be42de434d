import { describe, expect, it } from 'vitest';
import type { Quad } from '../../server/geometry/points.ts';
import { placedBySize } from '../../server/photo/placed-by-size.ts';
import type { Picture } from '../../server/photo/picture.ts';
import { settleBySize } from '../../server/photo/settle-by-size.ts';
import type { Settled } from '../../server/photo/settled.ts';
import { poseOf, sheetAt } from '../../server/photo/sheet-of-size.ts';
import { offPlane, tablePlane } from '../../server/photo/table-plane.ts';
import type { TablePlane } from '../../server/photo/table-plane.ts';
import { random } from './scene.ts';
import { applyHomography, homographyOf, squareOf } from './scene-geometry.ts';
import type { Corner } from './scene-geometry.ts';

/** The truth is a plane seen aslant: a homography, written apart from the metric under test. */
const [WIDE, HIGH] = [900, 700];
const toPhoto = homographyOf(squareOf(4, 3), [
  [40, 30],
  [870, 10],
  [850, 690],
  [20, 660],
]);

/** A sheet of width `across` and height 1, turned on the table. */
function trueSheet([x, y]: Corner, turn: number, across = 1): Quad<'photo'> {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return squareOf(across, 1).map(([u, v]) => {
    const [p, q] = [u - across / 2, v - 0.5];
    const [px, py] = applyHomography(toPhoto, [x + p * cos - q * sin, y + p * sin + q * cos]);
    return { x: px, y: py };
  }) as unknown as Quad<'photo'>;
}

const known = (across = 1): Quad<'photo'>[] =>
  [
    [0.7, 0.6],
    [2, 0.7],
    [3.3, 0.6],
    [0.7, 2.3],
    [3.2, 2.2],
  ].map((centre, at) => trueSheet(centre as unknown as Corner, 0.05 * (at - 2), across));

const off = (p: Quad<'photo'>, q: Quad<'photo'>): number =>
  Math.max(...p.map((corner, at) => Math.hypot(corner.x - q[at]!.x, corner.y - q[at]!.y)));

const planeOf = (
  quads: readonly Quad<'photo'>[],
  trust: readonly number[],
  aspect = 1,
): TablePlane =>
  tablePlane(
    quads.map((corners, at) => ({ corners, trust: trust[at] ?? 1 })),
    aspect,
  )!.plane;

describe('the table that sheets of one size tell', () => {
  it.each([
    [[2, 1.6], 0],
    [[1.9, 2.1], 0.3],
    [[2.6, 1.4], -0.7],
  ] as readonly (readonly [Corner, number])[])(
    'shows a sheet at %j, turned by %d, as the camera does',
    (centre, turn) => {
      const plane = planeOf(known(), []);
      const truth = trueSheet(centre, turn);
      const { middle, turn: told } = poseOf(plane, truth);
      expect(off(sheetAt(plane, middle, told, { across: 1, down: 1 }), truth)).toBeLessThan(0.3);
      expect(offPlane(plane, truth, 1)).toBeLessThan(0.001);
    },
  );

  it('turns a sheet as it was asked to, also an oblong one', () => {
    const plane = planeOf(known(1.41), [], 1.41);
    for (const turn of [-0.5, 0, 0.2, 0.7]) {
      const quad = sheetAt(plane, { x: 450, y: 350 }, turn, { across: 1.41, down: 1 });
      expect(poseOf(plane, quad).turn).toBeCloseTo(turn, 6);
      expect(offPlane(plane, quad, 1.41)).toBeLessThan(1e-6);
    }
  });

  it('is told by those that agree, though more outlines are wrong and one of these is trusted', () => {
    const wrong = known().map(([a, b, c, d], at): Quad<'photo'> => {
      const by = 6 + 5 * at;
      return [{ x: a.x - by, y: a.y }, b, { x: c.x, y: c.y + by }, { x: d.x - by, y: d.y }];
    });
    const right = [trueSheet([2, 1.6], 0.1), ...known().slice(0, 2)];
    const told = tablePlane(
      [
        ...right.map((corners) => ({ corners, trust: 0.9 })),
        ...wrong.map((corners, at) => ({ corners, trust: at === 0 ? 1 : 0.2 })),
      ],
      1,
    )!;
    expect(offPlane(told.plane, trueSheet([2.6, 2.2], 0.2), 1)).toBeLessThan(0.006);
    expect(told.agree).toBeGreaterThan(2);
    expect(told.agree).toBeLessThan(3.5);
  });

  it('is told by numbers, or not at all, by a camera held so aslant that no step from one outline reaches it', () => {
    let told = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const chance = random(seed);
      // The far edge of the table is seen as short as a third of the near one.
      const narrow = 150 + 150 * chance();
      const aslant = homographyOf(squareOf(4, 3), [
        [narrow, 200 * chance()],
        [WIDE - narrow, 200 * chance()],
        [WIDE, HIGH],
        [0, HIGH],
      ]);
      const sheets = Array.from({ length: 6 }, (_, at) =>
        squareOf(1, 1).map(([u, v]) => {
          const [x, y] = applyHomography(aslant, [
            0.1 + 1.3 * (at % 3) + u,
            0.2 + 1.4 * Math.floor(at / 3) + v,
          ]);
          const wrong = at === 0 ? 1 + 0.05 * chance() : 1;
          return { x: x * wrong, y };
        }),
      ) as unknown as Quad<'photo'>[];
      const found = tablePlane(
        sheets.map((corners, at) => ({ corners, trust: at === 0 ? 1 : 0.9 })),
        1,
      );
      if (found === null) continue;
      told++;
      expect([seed, found.agree, ...found.plane.of].filter((one) => !Number.isFinite(one))).toEqual(
        [],
      );
    }
    expect(told).toBeGreaterThan(100);
  });

  it('is not told by nothing', () => {
    expect(tablePlane([], 1)).toBeNull();
  });
});

/** A table of grain with a sheet hardly lighter than it, on which rows of strong motifs run beside its border. */
function drawn(sheet: Quad<'photo'> | null): Picture {
  const rgb = new Uint8Array(3 * WIDE * HIGH);
  const chance = random(5);
  const toSheet =
    sheet === null
      ? null
      : homographyOf(
          sheet.map(({ x, y }): Corner => [x, y]),
          squareOf(1, 1),
        );
  for (let y = 0; y < HIGH; y++)
    for (let x = 0; x < WIDE; x++) {
      const [u, v] = toSheet === null ? [-1, -1] : applyHomography(toSheet, [x + 0.5, y + 0.5]);
      const isOn = u >= 0 && v >= 0 && u < 1 && v < 1;
      const isMotif = isOn && (v * 8) % 1 > 0.4 && (v * 8) % 1 < 0.7 && (u * 10) % 1 < 0.6;
      const value = (isMotif ? 60 : isOn ? 138 : 128) + 4 * (chance() - 0.5);
      rgb.fill(Math.round(value), 3 * (y * WIDE + x), 3 * (y * WIDE + x) + 3);
    }
  return { width: WIDE, height: HIGH, rgb, primaries: 'srgb' };
}

const moved = (quad: Quad<'photo'>, dx: number, dy: number): Quad<'photo'> =>
  quad.map(({ x, y }) => ({ x: x + dx, y: y + dy })) as unknown as Quad<'photo'>;

describe('a sheet laid by its size', () => {
  const plane = planeOf(known(), []);
  const truth = trueSheet([1.9, 1.7], 0.04);

  it.each([
    [24, -20],
    [-26, 14],
    [3, 26],
  ])('goes to its faint border, not to a row of motifs, from %i and %i pixels off', (dx, dy) => {
    const placed = placedBySize(drawn(truth), plane, moved(truth, dx, dy), 1, 0.14, 0.05)!;
    expect(off(placed.corners, truth)).toBeLessThan(0.01 * 210);
    expect(placed.worth).toBeGreaterThan(0.9);
    expect(placed.lead).toBeGreaterThan(0.1);
  });

  it('is borne out nowhere on a bare table', () => {
    const placed = placedBySize(drawn(null), plane, truth, 1, 0.14, 0.05)!;
    expect(placed.worth).toBeLessThan(0.5);
  });

  it('is told nowhere outside the picture', () => {
    expect(placedBySize(drawn(null), plane, moved(truth, 2000, 0), 1, 0.1, 0.05)).toBeNull();
  });
});

describe('a place where a sheet may lie', () => {
  it('gives one sheet, though two places lead to it', () => {
    const truth = trueSheet([1.9, 1.7], 0.04);
    const sure = known().map((corners): Settled => ({
      corners,
      borne: [1, 1, 1, 1],
      outside: [1, 1, 1, 1],
      offSize: 0,
      lead: 1,
    }));
    const { added } = settleBySize({
      picture: drawn(truth),
      laid: sure,
      rough: known().map((corners) => ({ corners })),
      places: [moved(truth, 24, -20), moved(truth, -26, 14)],
      aspect: 1,
      perPreview: 1,
      lay: ({ start }) => ({ ...sure[0]!, corners: start }),
      hasBareStrip: () => false,
    });
    expect(added).toHaveLength(1);
    expect(off(added[0]!.corners, truth)).toBeLessThan(0.01 * 210);
  });
});
