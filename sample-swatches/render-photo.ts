import sharp from 'sharp';
import type { Lab } from '../server/colour/lab.ts';
import { applyHomography, inverseHomography } from '../server/geometry/homography.ts';
import type { PhotoPoint, Quad } from '../server/geometry/points.ts';
import { chanceOf, seedFor } from './chance.ts';
import { drawingOf } from './drawing/catalogue.ts';
import type { Direction } from './drawing/drawing.ts';
import type { PaperSide } from './paper/paper-side.ts';
import { patternOf } from './paper/paper-side.ts';
import { renderSide } from './paper/render-side.ts';
import type { ColourTruth } from './paper/render-side.ts';
import { lightMapOf, shine } from './scene/light-map.ts';
import { cornersOf, viewOf } from './scene/look-through.ts';
import { paintShadow, paintTable, paintThing } from './scene/paint-things.ts';
import type { Canvas } from './scene/paint-things.ts';
import { renderCard, renderSmear } from './scene/plain-things.ts';
import type { Scene, Thing } from './scene/scene.ts';
import { blur, develop } from './scene/sensor.ts';
import { renderSurface } from './scene/surfaces.ts';

/** What is true of a side that lies in a photo. */
export interface SideTruth {
  readonly side: string;
  /** Clockwise from the sheet's own top left, in pixels of the photo. */
  readonly corners: Quad<'photo'>;
  readonly palette: readonly ColourTruth[];
  readonly tonal: boolean;
  /** Sides with one name show one pattern. */
  readonly pattern: string;
  readonly colourway: readonly string[];
  /** The shortest shift across or down, in millimetres, that brings the print onto itself; null for a wash. */
  readonly repeat: number | null;
  readonly direction: Direction;
  /** Degrees clockwise by which the picture of the sheet has to be turned to bring its up to the top. */
  readonly up: number;
}

export interface PlainTruth {
  readonly name: string;
  readonly corners: Quad<'photo'>;
  readonly lab: Lab;
  /** Of a smear: the 5th and 95th percentile in lightness of what is covered. */
  readonly range?: { readonly darkest: Lab; readonly lightest: Lab };
}

export interface PhotoTruth {
  readonly width: number;
  readonly height: number;
  readonly difficulty: Scene['difficulty'];
  readonly surface: Scene['surface'];
  readonly sheets: readonly SideTruth[];
  readonly white: PlainTruth | null;
  readonly squares: readonly PlainTruth[];
  readonly smears: readonly PlainTruth[];
  readonly chips: readonly PlainTruth[];
}

export interface Photographed {
  readonly jpeg: Buffer;
  readonly truth: PhotoTruth;
}

/**
 * Takes the picture of a scene: table, shadows, papers, light, lens, sensor, JPEG.
 *
 * The same scene gives the same bytes with the same version of sharp.
 */
export async function renderPhoto(scene: Scene): Promise<Photographed> {
  const { width, height } = scene;
  const view = viewOf(scene.camera, width, height);
  const back = inverseHomography(view);
  const canvas: Canvas = { width, height, light: new Float32Array(3 * width * height) };
  paintTable(canvas, renderSurface(scene.surface, width > 2000 ? 2048 : 1024, scene.seed), back);
  const truths: { readonly thing: Thing; readonly truth: SideTruth | PlainTruth }[] = [];
  for (const [index, thing] of scene.things.entries()) {
    const corners = cornersOf(thing.place).map((p) =>
      applyHomography(view, p),
    ) as unknown as Quad<'photo'>;
    const chance = chanceOf(seedFor(scene.seed, 'lift', index));
    const lift = [scene.lift * (2 * chance() - 1), scene.lift * (2 * chance() - 1)] as const;
    if (thing.kind !== 'smear') paintShadow(canvas, corners, back, thing.place, scene.light.from);
    truths.push({ thing, truth: await lay(canvas, scene, thing, corners, back, lift) });
  }
  shine(canvas.light, width, height, lightMapOf(scene, back));
  for (let round = 0; round < scene.blur; round++) blur(canvas);
  const jpeg = await sharp(develop(canvas, scene), { raw: { width, height, channels: 3 } })
    .jpeg({ quality: scene.quality })
    .toBuffer();
  const plain = (kind: Thing['kind']): PlainTruth[] =>
    truths.filter(({ thing }) => thing.kind === kind).map(({ truth }) => truth as PlainTruth);
  return {
    jpeg,
    truth: {
      width,
      height,
      difficulty: scene.difficulty,
      surface: scene.surface,
      sheets: truths
        .filter(({ thing }) => thing.kind === 'sheet')
        .map(({ truth }) => truth as SideTruth),
      white: plain('card')[0] ?? null,
      squares: plain('square'),
      smears: plain('smear'),
      chips: plain('chip'),
    },
  };
}

async function lay(
  canvas: Canvas,
  scene: Scene,
  thing: Thing,
  corners: Quad<'photo'>,
  back: Parameters<typeof paintThing>[2],
  lift: readonly [number, number],
): Promise<SideTruth | PlainTruth> {
  const { place } = thing;
  const pixels = Math.max(32, Math.round(longest(corners)));
  if (thing.kind === 'sheet') {
    const { raster, palette } = await renderSide(thing.side, place.width, pixels);
    paintThing(canvas, corners, back, place, raster, lift);
    return { ...sideTruth(thing.side, place.turn), corners, palette };
  }
  const { name, lab, seed } = thing;
  if (thing.kind !== 'smear') {
    paintThing(canvas, corners, back, place, renderCard(lab, pixels, seed), lift);
    return { name, corners, lab };
  }
  const card = scene.things.find((other) => other.kind === 'card');
  const under = card?.kind === 'card' ? card.lab : { l: 94, a: 0, b: -3 };
  const { raster, cover, darkest, lightest, lab: mean } = renderSmear(lab, under, pixels, seed);
  paintThing(canvas, corners, back, place, raster, [0, 0], cover);
  return { name, corners, lab: mean, range: { darkest, lightest } };
}

function sideTruth(side: PaperSide, turn: number): Omit<SideTruth, 'corners' | 'palette'> {
  const { design } = side;
  const print = design.kind === 'print' ? design : null;
  return {
    side: side.id,
    tonal: print === null,
    pattern: patternOf(side),
    colourway: side.colours,
    repeat: print === null ? null : print.repeat / (drawingOf(print.drawing).within ?? 1),
    direction: print === null ? 'none' : drawingOf(print.drawing).direction,
    up: (360 - Math.round(turn / 90) * 90 + 360) % 360,
  };
}

function longest(corners: readonly PhotoPoint[]): number {
  return Math.max(
    ...corners.map((p, index) => {
      const q = corners[(index + 1) % corners.length]!;
      return Math.hypot(q.x - p.x, q.y - p.y);
    }),
  );
}
