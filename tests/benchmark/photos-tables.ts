/** The tables on which finding is hard, as scenes of the samples' generator. */
import { makePad } from '../../sample-swatches/pad/make-pad.ts';
import type { PaperSide } from '../../sample-swatches/paper/paper-side.ts';
import { makeScene } from '../../sample-swatches/scene/make-scene.ts';
import type { Place, Scene, SurfaceKind } from '../../sample-swatches/scene/scene.ts';

export interface Situation {
  readonly name: string;
  readonly sheets: number;
  readonly surface: SurfaceKind;
  /** Millimetres between neighbours. */
  readonly gap: number;
  /** Degrees by which each sheet may be turned. */
  readonly turned?: number;
  /** What is printed on a side, given what the pad would have. */
  readonly print?: (side: PaperSide, index: number) => PaperSide;
  /** A last touch to the scene. */
  readonly touch?: (scene: Scene) => Scene;
  /** How many of the sheets lie whole in the picture; all unless said. */
  readonly whole?: number;
}

export const SIDE = 152.4;

const withGround =
  (hex: string, stock: PaperSide['stock'] = 'smooth') =>
  (side: PaperSide): PaperSide =>
    side.design.kind === 'wash'
      ? side
      : { ...side, stock, colours: [hex, ...side.colours.slice(1)] };

const striped = (side: PaperSide, index: number): PaperSide => ({
  ...side,
  colours: [side.colours[0]!, side.colours[1]!, side.colours[2] ?? side.colours[0]!],
  design: {
    kind: 'print',
    drawing: ['stripes', 'awning', 'gingham'][index % 3]!,
    seed: index,
    repeat: 22 + 3 * index,
    cutAt: [0.13 * index, 0.29 * index],
  },
});

const checked = (side: PaperSide): PaperSide => ({
  ...side,
  design: {
    kind: 'print',
    drawing: 'gingham',
    seed: 1,
    // Each pad has its own, up to checks of 20 mm; a wash has none.
    repeat: side.design.kind === 'print' ? Math.min(40, side.design.repeat) : 24,
    cutAt: [0.13, 0.29],
  },
});

/** A shadow whose edge is a few millimetres wide, as of an arm or a window bar. */
const hardShadow = (scene: Scene): Scene => ({
  ...scene,
  light: { ...scene.light, shadow: { ...scene.light.shadow, edge: 12, depth: 0.3 } },
});

const framed =
  (margin: number) =>
  (scene: Scene): Scene => {
    const { place } = scene.things[0]!;
    const width = SIDE + 2 * margin;
    const view = { x: place.x - width / 2, y: place.y - width / 2, width, height: width };
    return {
      ...scene,
      height: scene.width,
      camera: { ...scene.camera, view, lean: 0, sway: 0, turn: 0 },
    };
  };

/** The picture ends so many millimetres short of where it would. */
const cutOff =
  (by: number) =>
  (scene: Scene): Scene => {
    const { view } = scene.camera;
    return { ...scene, camera: { ...scene.camera, view: { ...view, width: view.width - by } } };
  };

export const SITUATIONS: readonly Situation[] = [
  { name: 'white board, 2 mm apart', sheets: 12, surface: 'white board', gap: 2 },
  { name: 'white board, 3 mm apart', sheets: 12, surface: 'white board', gap: 3 },
  { name: 'grey desk, 2 mm apart', sheets: 12, surface: 'grey desk', gap: 2 },
  { name: 'wood, 3 mm apart', sheets: 12, surface: 'wood', gap: 3 },
  { name: 'cutting mat, 3 mm apart', sheets: 12, surface: 'cutting mat', gap: 3 },
  { name: 'cloth, 12 mm apart', sheets: 12, surface: 'cloth', gap: 12 },
  { name: 'cutting mat with grid lines', sheets: 9, surface: 'cutting mat', gap: 20, turned: 5 },
  { name: 'cloth, turned', sheets: 9, surface: 'cloth', gap: 20, turned: 5 },
  {
    name: 'white grounds on a white board',
    sheets: 9,
    surface: 'white board',
    gap: 18,
    turned: 3,
    print: withGround('#fbfaf6'),
  },
  {
    name: 'kraft on wood',
    sheets: 9,
    surface: 'wood',
    gap: 18,
    turned: 3,
    print: withGround('#b58d62', 'kraft'),
  },
  {
    name: 'stripes that run off the edge',
    sheets: 9,
    surface: 'white board',
    gap: 18,
    turned: 3,
    print: striped,
  },
  {
    name: 'edge of a shadow on a white board',
    sheets: 9,
    surface: 'white board',
    gap: 18,
    turned: 3,
    touch: hardShadow,
  },
  { name: 'any rotation, grey desk', sheets: 6, surface: 'grey desk', gap: 70, turned: 180 },
  { name: 'any rotation, wood', sheets: 6, surface: 'wood', gap: 70, turned: 180 },
  {
    name: 'one sheet filling the frame',
    sheets: 1,
    surface: 'grey desk',
    gap: 0,
    touch: framed(4),
  },
  {
    name: 'one sheet, no table in sight',
    sheets: 1,
    surface: 'grey desk',
    gap: 0,
    touch: framed(-1),
  },
  {
    name: 'one sheet of checks, no table in sight',
    sheets: 1,
    surface: 'grey desk',
    gap: 0,
    print: checked,
    touch: framed(-1),
  },
  {
    name: 'a column partly out of the picture',
    sheets: 6,
    surface: 'grey desk',
    gap: 18,
    turned: 3,
    touch: cutOff(90),
    whole: 4,
  },
  {
    name: 'a column a little out of the picture, cloth',
    sheets: 6,
    surface: 'cloth',
    gap: 18,
    turned: 3,
    touch: cutOff(45),
    whole: 4,
  },
  { name: 'one sheet on wood', sheets: 1, surface: 'wood', gap: 0, turned: 4 },
];

/** Sheets in rows, turned a little, the camera set up anew so that all are seen. */
export function laid(situation: Situation, seed: number): Scene {
  const { sheets, surface, gap, turned = 0.4, print, touch } = situation;
  const pad = makePad(seed, undefined, Math.max(2, sheets));
  const sides = pad.sheets
    .slice(0, sheets)
    .map(({ front }, index) => print?.(front, index) ?? front);
  const scene = makeScene(seed, 'normal', sides, { pixels: 2016, surface, card: false });
  const columns = sheets <= 1 ? 1 : Math.ceil(Math.sqrt(sheets * 1.2));
  // A sheet turned by some degrees reaches further out; the gap is held between straight ones.
  const step = SIDE + gap;
  const things = scene.things.map((thing, index) => {
    const spread = (1013 * (seed + 1) + 337 * index) % 200;
    const place: Place = {
      ...thing.place,
      x: (index % columns) * step,
      y: Math.floor(index / columns) * step,
      turn: turned * (spread / 100 - 1),
    };
    return { ...thing, place };
  });
  const rows = Math.ceil(sheets / columns);
  const margin = turned > 45 ? 50 : 22;
  const view = {
    x: -SIDE / 2 - margin,
    y: -SIDE / 2 - margin,
    width: (columns - 1) * step + SIDE + 2 * margin,
    height: (rows - 1) * step + SIDE + 2 * margin,
  };
  const set = { ...scene, things, camera: { ...scene.camera, view } };
  return touch === undefined ? set : touch(set);
}
