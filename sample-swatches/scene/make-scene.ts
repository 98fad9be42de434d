import type { Lab } from '../../server/colour/lab.ts';
import { boundsOf } from '../../server/geometry/bounds.ts';
import { between, chanceOf, oneOf, seedFor } from '../chance.ts';
import type { Chance } from '../chance.ts';
import type { PaperSide } from '../paper/paper-side.ts';
import { areApart, cornersOf } from './look-through.ts';
import { SHEET } from '../pad/paper-pad.ts';
import type { Camera, Difficulty, Light, Place, Scene, SurfaceKind, Thing } from './scene.ts';

export interface SceneWishes {
  /** Long side of the picture in pixels; pictures are 4 : 3. */
  readonly pixels?: number;
  readonly surface?: SurfaceKind;
  /** Whether a white card lies in the picture. */
  readonly card?: boolean;
  /** Whether a row of scraps of known colours lies in the picture. */
  readonly chips?: boolean;
}

/** How far things go wrong at each difficulty. */
const TAKING = {
  scanner: {
    lean: 0,
    slip: 1,
    stray: 1,
    gap: [6, 12],
    uneven: 0,
    cast: 0.015,
    shadow: 0,
    blur: 1,
    shot: 0.002,
    read: 0.0008,
    tone: 0,
    lift: 0,
    quality: 95,
  },
  normal: {
    lean: 5,
    slip: 2.5,
    stray: 3,
    gap: [14, 26],
    uneven: 1,
    cast: 0.07,
    shadow: 0.1,
    blur: 1,
    shot: 0.008,
    read: 0.0015,
    tone: 0,
    lift: 0.012,
    quality: 90,
  },
  hard: {
    lean: 13,
    slip: 8,
    stray: 4,
    gap: [9, 20],
    uneven: 1.8,
    cast: 0.16,
    shadow: 0.38,
    blur: 2,
    shot: 0.018,
    read: 0.004,
    tone: 0.4,
    lift: 0.035,
    quality: 82,
  },
} as const satisfies Record<Difficulty, object>;

const SURFACES: Record<Difficulty, readonly SurfaceKind[]> = {
  scanner: ['white board'],
  normal: ['white board', 'grey desk', 'wood', 'cutting mat', 'cloth'],
  hard: ['white board', 'grey desk', 'wood', 'cutting mat', 'cloth'],
};

/**
 * Lays sides apart on a table, row by row, and sets up camera and light.
 *
 * Takes       a seed, a difficulty, the sides in reading order (1 to 12), and wishes.
 * Gives       the same scene for the same arguments.
 */
export function makeScene(
  seed: number,
  difficulty: Difficulty,
  sides: readonly PaperSide[],
  wishes: SceneWishes = {},
): Scene {
  const chance = chanceOf(seedFor(seed, 'places'));
  const places = grid(sides.length, SHEET, difficulty, chance);
  const sheets = sides.map((side, index): Thing => ({
    kind: 'sheet',
    place: places[index]!,
    side,
  }));
  return photographed(seed, difficulty, sheets, wishes);
}

/** The same sheets, each turned over where it lies; the camera comes back to nearly the same place. */
export function turnedOver(scene: Scene, backs: readonly PaperSide[], seed: number): Scene {
  const chance = chanceOf(seedFor(seed, 'turned'));
  const nudge = scene.difficulty === 'hard' ? 6 : 3;
  const laid: Place[] = [];
  const things = scene.things.map((thing): Thing => {
    if (thing.kind !== 'sheet') return thing;
    const { place } = thing;
    const rest = scene.things.filter((other) => other !== thing).map((other) => other.place);
    const spot = (loose: number): Place => ({
      ...place,
      x: place.x + loose * between(chance, -nudge, nudge),
      y: place.y + loose * between(chance, -nudge, nudge),
      turn: place.turn + loose * between(chance, -1.2, 1.2),
    });
    const turned = firstFree(spot, [...laid, ...rest.slice(laid.length)]);
    laid.push(turned);
    return { kind: 'sheet', side: backs[laid.length - 1]!, place: turned };
  });
  const { view } = scene.camera;
  return {
    ...scene,
    seed: seedFor(seed, 'back'),
    things,
    camera: {
      ...cameraFor(seedFor(seed, 'camera'), scene.difficulty, view),
      view: {
        x: view.x + between(chance, -STEP, STEP) - STEP,
        y: view.y + between(chance, -STEP, STEP) - STEP,
        width: view.width + 2 * STEP,
        height: view.height + 2 * STEP,
      },
    },
  };
}

/** Millimetres by which the camera comes back to another place, and stands further off to hold all. */
const STEP = 8;

/** Squares of cardstock beside a white card, in reading order. */
export function squaresScene(
  seed: number,
  difficulty: Difficulty,
  colours: readonly { readonly name: string; readonly lab: Lab }[],
  wishes: SceneWishes = {},
): Scene {
  const chance = chanceOf(seedFor(seed, 'places'));
  const side = 60;
  const places = grid(colours.length, side, difficulty, chance);
  const squares = colours.map(({ name, lab }, index): Thing => ({
    kind: 'square',
    place: places[index]!,
    name,
    lab,
    seed: seedFor(seed, index),
  }));
  return photographed(seed, difficulty, squares, wishes);
}

/** Smears of ink on one white card, in reading order. */
export function smearsScene(
  seed: number,
  difficulty: Difficulty,
  inks: readonly { readonly name: string; readonly lab: Lab }[],
  wishes: SceneWishes = {},
): Scene {
  const chance = chanceOf(seedFor(seed, 'places'));
  const columns = Math.ceil(Math.sqrt(inks.length / 1.5));
  const rows = Math.ceil(inks.length / columns);
  const [width, height] = [62, 32];
  const card: Thing = {
    kind: 'card',
    name: 'white card',
    lab: paperWhite(seed),
    seed: seedFor(seed, 'card'),
    place: {
      x: 0,
      y: 0,
      turn: between(chance, -2, 2),
      width: columns * width + 14,
      height: rows * height + 14,
    },
  };
  const smears = inks.map(({ name, lab }, index): Thing => ({
    kind: 'smear',
    name,
    lab,
    seed: seedFor(seed, index),
    place: {
      x: ((index % columns) - (columns - 1) / 2) * width + between(chance, -2, 2),
      y: (Math.floor(index / columns) - (rows - 1) / 2) * height + between(chance, -1.5, 1.5),
      turn: between(chance, -4, 4),
      width: width - 10,
      height: height - 9,
    },
  }));
  return photographed(seed, difficulty, [card, ...smears], { ...wishes, card: false });
}

/** Rows of squares, each strayed and turned a little, none nearer to another than a few millimetres. */
function grid(count: number, side: number, difficulty: Difficulty, chance: Chance): Place[] {
  const { gap, slip, stray } = TAKING[difficulty];
  const columns = count <= 3 ? count : Math.ceil(Math.sqrt(count * 1.2));
  const step = side + between(chance, gap[0], gap[1]) * Math.max(0.6, side / SHEET);
  const spotOf =
    (index: number) =>
    (loose: number): Place => ({
      x: (index % columns) * step + loose * between(chance, -stray, stray),
      y: Math.floor(index / columns) * step + loose * between(chance, -stray, stray),
      turn:
        loose * between(chance, -slip, slip) +
        (difficulty === 'hard' ? 90 * Math.floor(4 * chance()) : 0),
      width: side,
      height: side,
    });
  const places = Array.from({ length: count }, (_, index) => spotOf(index)(0));
  for (let index = 0; index < count; index++) {
    const others = places.filter((_, other) => other !== index);
    places[index] = firstFree(spotOf(index), others);
  }
  return places;
}

/** Draws again, each time nearer to its straight place, until it lies clear of the others. */
function firstFree(spot: (loose: number) => Place, others: readonly Place[]): Place {
  for (let loose = 1; loose > 0; loose -= 0.04) {
    const place = spot(loose);
    if (others.every((other) => areApart(place, other, CLEAR))) return place;
  }
  return spot(0);
}

/** The least that sheets lie apart, in millimetres. */
const CLEAR = 2;

function photographed(
  seed: number,
  difficulty: Difficulty,
  laid: readonly Thing[],
  wishes: SceneWishes,
): Scene {
  const chance = chanceOf(seedFor(seed, 'taking'));
  const taking = TAKING[difficulty];
  const things = [...laid];
  const bounds = boundsOf(laid.flatMap(({ place }) => cornersOf(place)));
  let bottom = bounds.bottom;
  if (wishes.card ?? true) {
    const small = laid[0]!.place.width < 100;
    const [width, height] = small ? [70, 40] : [85, 55];
    const x = between(
      chance,
      bounds.left + width / 2,
      bounds.left + Math.max(width, 0.4 * (bounds.right - bounds.left)),
    );
    things.push(
      cardAt(
        seed,
        x,
        bounds.bottom + height / 2 + (small ? 9 : 14),
        width,
        height,
        between(chance, -3, 3),
      ),
    );
    bottom += height + (small ? 9 : 14);
  }
  if (wishes.chips ?? false) {
    things.push(...chipsAt(seed, bounds.left, bottom + 20));
    bottom += 32;
  }
  const margin = between(chance, 10, 24);
  const view = {
    x: bounds.left - margin,
    y: bounds.top - margin,
    width: bounds.right - bounds.left + 2 * margin,
    height: bottom - bounds.top + 2 * margin,
  };
  const pixels = wishes.pixels ?? 4032;
  return {
    seed,
    difficulty,
    width: pixels,
    height: Math.round((pixels * 3) / 4),
    surface: wishes.surface ?? oneOf(chance, SURFACES[difficulty]),
    things,
    camera: cameraFor(seedFor(seed, 'camera'), difficulty, view),
    light: lightFor(seed, difficulty, view),
    blur: taking.blur,
    noise: { read: taking.read, shot: taking.shot },
    toneCurve: taking.tone,
    lift: taking.lift,
    quality: taking.quality,
  };
}

/** White paper is a little blue and never the same: L 93 to 96, b -6 to -1. */
function paperWhite(seed: number): Lab {
  const chance = chanceOf(seedFor(seed, 'white'));
  return { l: between(chance, 93, 96), a: between(chance, -0.2, 0.9), b: between(chance, -6, -1) };
}

function cardAt(
  seed: number,
  x: number,
  y: number,
  width: number,
  height: number,
  turn: number,
): Thing {
  return {
    kind: 'card',
    name: 'white card',
    lab: paperWhite(seed),
    seed: seedFor(seed, 'card'),
    place: { x, y, turn, width, height },
  };
}

/** The scraps that she keeps to lay into every picture. */
const CHIPS: readonly (readonly [string, Lab])[] = [
  ['light grey', { l: 80, a: 0, b: 1 }],
  ['grey', { l: 55, a: 0, b: 0 }],
  ['charcoal', { l: 28, a: 0, b: -1 }],
  ['red', { l: 48, a: 52, b: 30 }],
  ['yellow', { l: 82, a: 4, b: 68 }],
  ['blue', { l: 42, a: 4, b: -40 }],
];

function chipsAt(seed: number, left: number, y: number): Thing[] {
  return CHIPS.map(([name, lab], index) => ({
    kind: 'chip',
    name,
    lab,
    seed: seedFor(seed, 'chip', index),
    place: { x: left + 26 * index + 12, y, turn: 0, width: 20, height: 20 },
  }));
}

function cameraFor(seed: number, difficulty: Difficulty, view: Camera['view']): Camera {
  const chance = chanceOf(seed);
  const { lean } = TAKING[difficulty];
  return {
    lean: between(chance, -0.3 * lean, lean),
    sway: between(chance, -lean, lean) * 0.6,
    turn: between(chance, -lean, lean) * 0.4,
    view,
    distance: between(chance, 1.1, 1.5),
  };
}

function lightFor(seed: number, difficulty: Difficulty, view: Camera['view']): Light {
  const chance = chanceOf(seedFor(seed, 'light'));
  const { uneven, cast, shadow } = TAKING[difficulty];
  const size = view.width;
  const middle = { x: view.x + view.width / 2, y: view.y + view.height / 2 };
  const standing = (far: number, high: number): Light['from'] => {
    const angle = 2 * Math.PI * chance();
    return {
      x: middle.x + far * size * Math.cos(angle),
      y: middle.y + far * size * Math.sin(angle),
      z: high * size,
    };
  };
  const tint = (): readonly [number, number, number] => {
    const warm = between(chance, -1, 1) * cast;
    return [1 + warm, 1 + between(chance, -0.2, 0.2) * cast, 1 - warm * between(chance, 0.9, 1.4)];
  };
  const even = uneven === 0;
  return {
    from: even
      ? standing(0.1, 40)
      : standing(
          between(chance, 2.2, 3.2) / uneven ** 0.5,
          between(chance, 2.2, 3.2) / uneven ** 0.5,
        ),
    colour: tint(),
    second: {
      from: even ? standing(0.1, 40) : standing(1.6, between(chance, 1.5, 2.2)),
      colour: tint(),
      part: difficulty === 'hard' ? 0.3 : 0.12,
    },
    exposure: between(chance, 0.7, 0.86) * (uneven > 1 ? between(chance, 0.65, 1) : 1),
    shadow: {
      x: middle.x + between(chance, -0.35, 0.35) * size,
      y: middle.y + between(chance, -0.25, 0.25) * size,
      towards: 360 * chance(),
      edge: between(chance, 0.15, 0.4) * size,
      depth: between(chance, 0.2, 1) * shadow,
    },
    vignette: even ? 0 : between(chance, 0.02, 0.1),
  };
}
