import type { PhotoPoint, Quad } from '../geometry/points.ts';
import type { LabImage } from '../colour/lab.ts';
import { hasBareStrip } from './bare-strip.ts';
import { scaledQuad } from './find-sheets.ts';
import { TABLE_OUTSIDE, layerOf } from './lay-onto-edges.ts';
import { besideShadow } from './lighter-outside.ts';
import { ontoTable } from './onto-table.ts';
import { pickSides } from './pick-sides.ts';
import type { Picked, Weighed } from './pick-sides.ts';
import type { OpenedPixels, PhotoAsk } from './picture.ts';
import { settleBySize } from './settle-by-size.ts';
import type { Rough, SettledSheets } from './settled.ts';
import { guessesOf } from './side-lines.ts';
import type { SideGuess } from './side-lines.ts';
import { tableMetric } from './table-metric.ts';
import type { TableMetric } from './table-metric.ts';
import type { Table } from './table.ts';
import { tableOutside } from './table-outside.ts';

/**
 * Lays the rough quads of the preview onto the edges of the sheets in the large picture.
 *
 * Near each side there may be several edges: the border, its shadow, the neighbour across a 2 mm gap. For each
 * side a few are kept; the inner one that has table outside it comes first. Then all sheets together tell
 * how large a sheet is at each place, and each sheet takes those edges that give it this size. Those of which
 * too little is seen, and the places where one may lie, are then laid by that size.
 *
 * Takes       the photo, rough outlines and places on the preview, the table, and the size of a sheet.
 */
export function settleSheets(
  photo: OpenedPixels,
  rough: readonly Rough[],
  table: Table,
  image: LabImage,
  size: PhotoAsk['sheetMillimetres'],
  places: readonly Quad<'photo'>[] = [],
): SettledSheets {
  const perPreview = photo.scale / (photo.fullScale ?? 1);
  const aspect = size === null ? 1 : Math.max(size.width / size.height, size.height / size.width);
  const sheets = rough.map(({ corners, byMotifs, loose }) => {
    const onTable = byMotifs === true ? corners : ontoTable(corners, table.reached, image);
    const near = scaledQuad(onTable, perPreview);
    return near.map((from, side) =>
      guessSide(photo, near, side, from, table, perPreview, loose === true ? LOOSE_REACH : REACH),
    );
  });
  let picked = sheets.map((sides) => pickSides(sides.map(innermost), null, aspect, ROUGH_MISFIT));
  let metric: TableMetric | null = null;
  for (let round = 0; round < ROUNDS && size !== null; round++) {
    metric = tableMetric(telling(picked, rough), aspect);
    if (metric === null) break;
    picked = sheets.map((sides) => pickSides(sides, metric, aspect, ROUGH_MISFIT));
  }
  const lay = layerOf(photo, table, aspect);
  const laid = picked.map((one, index) =>
    lay({
      start: one?.quad ?? scaledQuad(rough[index]!.corners, perPreview),
      reach: rough[index]!.loose === true ? LOOSE_REACH : REACH,
      metric,
      misfit: FINE_MISFIT,
      lead: one?.lead ?? 0,
    }),
  );
  return size === null || metric === null
    ? { laid, added: [] }
    : settleBySize({
        picture: photo.full,
        laid,
        rough,
        places,
        aspect,
        perPreview,
        lay,
        hasBareStrip: (corners) =>
          hasBareStrip(scaledQuad(corners, 1 / perPreview), table.reached, image.width),
      });
}

/** The outlines that tell how large a sheet is: a rough one of loose motifs only where there are too few others. */
function telling(
  picked: readonly (Picked | null)[],
  rough: readonly Rough[],
): readonly Quad<'photo'>[] {
  const of = (isAsked: (sheet: Rough) => boolean): Quad<'photo'>[] =>
    picked.flatMap((one, at) => (one !== null && isAsked(rough[at]!) ? [one.quad] : []));
  const firm = of(({ loose }) => loose !== true);
  return firm.length < FEWEST ? of(() => true) : firm;
}

/** From fewer sheets no metric comes. */
const FEWEST = 3;

/** The sheets told right show the size that tells the others right. */
const ROUNDS = 3;

type Guess = SideGuess & Weighed;

/** A shadow beside a sheet is no wider than this part of its side; it tells of the edge where the table beside it does not. */
const SHADOW = 0.022;
const BESIDE_SHADOW = 0.5;

/** Edges so much worse than the best are not tried with those of the other sides. */
const FAR_WORSE = 1;

/** Part of a side within which its true place is looked for. */
const REACH = 0.036;
/** Motifs may end well within the border. */
const LOOSE_REACH = 0.08;

function guessSide(
  photo: OpenedPixels,
  quad: Quad<'photo'>,
  side: number,
  from: PhotoPoint,
  table: Table,
  perPreview: number,
  part: number,
): Guess[] {
  const to = quad[(side + 1) % 4]!;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const reach = Math.max(part * length, 3 * perPreview);
  const guesses = guessesOf(photo.full, from, to, reach);
  const strongest = Math.max(1, ...guesses.map(({ strength }) => strength));
  const shadows = besideShadow(photo.full, guesses, SHADOW * length);
  const outsides = guesses.map((guess) =>
    tableOutside(photo.full, guess, table.colours, perPreview),
  );
  const unlike = Math.max(...outsides);
  const weighed = guesses.map((guess, index) => {
    const outside = outsides[index]!;
    const shadow = BESIDE_SHADOW * (1 - unlike) * shadows[index]!;
    const seen = guess.borne + 0.5 * (guess.strength / strongest);
    return { ...guess, outside, worth: seen + TABLE_OUTSIDE * outside + shadow };
  });
  const best = Math.max(...weighed.map(({ worth }) => worth));
  return weighed.filter(({ worth }) => worth > best - FAR_WORSE);
}

const ROUGH_MISFIT = 0.007;
const FINE_MISFIT = 0.004;

/** Of a side without a size to go by, the inner one of the edges that fit about equally well. */
function innermost(guesses: readonly Guess[]): Guess[] {
  const best = Math.max(...guesses.map(({ worth }) => worth));
  const good = guesses.filter(({ worth }) => worth > best - 0.15);
  const inner = good.reduce((least, guess) => (guess.out < least.out ? guess : least));
  return guesses.map((guess) => (guess === inner ? { ...guess, worth: best + 0.01 } : guess));
}
