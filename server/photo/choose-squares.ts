import type { LabImage } from '../colour/lab.ts';
import { applyHomography, homographyOf, inverseHomography } from '../geometry/homography.ts';
import type { Quad } from '../geometry/points.ts';
import { rectangleQuad } from '../geometry/quad.ts';
import type { Chosen } from './choose-sheets.ts';
import { aspectOf } from './find-sheets.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import { holesIn } from './holes.ts';
import { notesOnEmptyPlaces } from './notes-on-left-out.ts';
import { pixelsIn } from './pixels-in.ts';
import type { Picture } from './picture.ts';
import { plainPieces } from './plain-pieces.ts';
import { regionsOf } from './regions.ts';
import type { Region } from './regions.ts';
import { withoutThin } from './spread.ts';
import { piecesIn, squaresApart } from './squares-apart.ts';
import { median } from './surface.ts';
import { evenLight } from './light.ts';
import { brightestOf } from './white-reference.ts';
import { withoutWhiskers } from './without-whiskers.ts';
import { isWhite, patchOfPixels, shrunken } from './white-card.ts';
import type { Patch } from './white-card.ts';

/**
 * Squares of cardstock on a table, or smears of ink on white card.
 *
 * A card with smears on it is told by a pale even ground with blobs of other colours inside. Among squares,
 * the one of another shape or size than the rest may be the white card; it is no supply.
 *
 * Takes       what was seen, and whether the scraps that tie photos were shown or are known: then none has to be told.
 */
export function chooseSquares(
  overview: Overview,
  preview: Picture,
  scrapsAreKnown = false,
): Chosen {
  const brightest = brightestOf(preview, evenLight(preview));
  const pieces = plainPieces(overview);
  const candidates = [...overview.candidates, ...withoutWhiskers(overview)];
  const smeared = candidates.flatMap((candidate) => {
    const seen = smearsOn(candidate, overview.image, preview);
    return seen === null ||
      !isWhite({ ...seen.patch, uneven: 0 }, brightest) ||
      seen.smears.length <= piecesIn(candidate, pieces).length
      ? []
      : [{ candidate, ...seen }];
  });
  const isPlain = pieces.length > overview.unclear.length / 2;
  const whole = smeared.length === 0 && !isPlain ? smearsOnGround(overview, preview) : null;
  if (whole !== null) return { sheets: [], others: [], ...whole };
  const rest = candidates.filter(
    (candidate) => !smeared.some((card) => card.candidate === candidate),
  );
  const { plain, cards } = squaresApart(rest, pieces, overview, preview, brightest);
  const { odd, scraps } = oddOnes(plain, SCRAP * preview.width * preview.height);
  const sheets = plain
    .filter((candidate) => !odd.includes(candidate))
    .filter(({ corners }) => aspectOf(corners) < 3);
  const largest = [...smeared, ...cards].sort((p, q) => q.candidate.area - p.candidate.area)[0];
  return {
    sheets,
    others: odd,
    notes: [
      ...notesOnHoles(overview, sheets, [...odd, ...cards.map(({ candidate }) => candidate)]),
      ...notesOnScraps(scrapsAreKnown ? 0 : scraps),
    ],
    smears: smeared.flatMap(({ smears }) => smears),
    ...(largest === undefined
      ? {}
      : { white: { corners: largest.candidate.corners, patch: largest.patch } }),
  };
}

/** A square of just the table's colour is not seen; the rows of the others tell of it. */
function notesOnHoles(
  overview: Overview,
  squares: readonly Candidate[],
  others: readonly Candidate[],
): string[] {
  const { filled, empty } = holesIn(overview, squares, others);
  return notesOnEmptyPlaces(filled.length + empty.length, 'square');
}

/**
 * Smears on a white card so close to the camera that none of its edges shows: the ground that fills the picture
 * is pale and plain, and what lies on it has mostly no four corners.
 */
function smearsOnGround(
  { table, unclear, candidates, blocks, image }: Overview,
  preview: Picture,
): Required<Pick<Chosen, 'smears' | 'white' | 'notes'>> | null {
  if (unclear.length === 0 || unclear.length < candidates.length) return null;
  if (table.roughness > PLAIN || table.share < LEAST_BARE) return null;
  const { width, height } = image;
  const picture = rectangleQuad<'photo'>(0, 0, width, height);
  // The white is told where the light of the whole picture is told: around its middle.
  const corners = shrunken(picture, 0.25);
  const bare = pixelsIn(corners, width, height).filter(
    (pixel, index) => index % 5 === 0 && table.reached[pixel] === 1,
  );
  if (bare.length < 200) return null;
  const patch = patchOfPixels(preview, Array.from(bare));
  const [least, most] = [Math.min(...patch.light), Math.max(...patch.light)];
  if (least < PALE || most > CAST * least) return null;
  return {
    smears: joinedBoxes(blocks, picture, width),
    white: { corners, patch },
    notes: [
      'No edge of the white card shows, so the pale ground that fills the picture was taken for it.',
    ],
  };
}

/** How far neighbouring pixels of a plain card differ at most, in CIELAB units: wood and cloth are rougher. */
const PLAIN = 0.8;
/** Part of the picture that has to be bare card. */
const LEAST_BARE = 0.4;
/** Linear light of the dimmest channel: a white card in a picture taken at all well is above, a grey desk below. */
const PALE = 0.38;
/** Lamp light colours a white card up to this; wood and kraft are more coloured. */
const CAST = 1.6;

interface Odd {
  readonly odd: readonly Candidate[];
  /** How many of them were put aside as scraps, though they are the most alike. */
  readonly scraps: number;
}

/**
 * Those whose size or shape is clearly not that of the squares, which are the most alike; but where others alike are
 * much larger, those are the squares, as scraps that tie photos together may be more: where the small ones have the size
 * of scraps, or the larger are about half as many at least. Two greeting cards beside six squares are no squares.
 */
function oddOnes(candidates: readonly Candidate[], scrap: number): Odd {
  if (candidates.length < 3) return { odd: [], scraps: 0 };
  const most = mostAlike(candidates);
  const largest = Math.max(...most.map(({ area }) => area));
  const larger = mostAlike(candidates.filter(({ area }) => area > LARGER * largest));
  const isLarger =
    larger.length >= FEWEST && (largest < scrap || larger.length >= HALF * most.length);
  const squares = isLarger ? larger : most;
  return {
    odd: candidates.filter((candidate) => !squares.includes(candidate)),
    scraps: isLarger ? most.length : 0,
  };
}

/** So much larger than a scrap is a square of cardstock; a white card is alone of its kind. */
const LARGER = 2;
const FEWEST = 2;
/** About half. */
const HALF = 0.45;
/** Part of the picture that a scrap covers at most: of 20 mm beside two squares of 60 mm, one per cent. */
const SCRAP = 0.016;

function notesOnScraps(count: number): string[] {
  if (count < TOLD) return [];
  return [
    `${count} smaller things of one size were taken for colour scraps and left out; add each by a touch on this photo if they are squares.`,
  ];
}

/** From so many on it is worth a word. */
const TOLD = 4;

/** The largest group of things of about one size and shape, those around one of them. */
function mostAlike(candidates: readonly Candidate[]): Candidate[] {
  let most: Candidate[] = [];
  for (const one of candidates) {
    const alike = candidates.filter(
      ({ area, corners }) =>
        Math.abs(Math.log(area / one.area)) < 0.35 &&
        Math.abs(Math.log(aspectOf(corners) / aspectOf(one.corners))) < 0.25,
    );
    if (alike.length > most.length) most = alike;
  }
  return most;
}

interface Smears {
  readonly smears: readonly Quad<'photo'>[];
  readonly patch: Patch;
}

/** Distance from the card's colour, in CIELAB units, from which ink is seen. */
const INKED = 10;
/** Part of the card that a smear has to cover at least. */
const LEAST_SMEAR = 0.003;

function smearsOn(card: Candidate, image: LabImage, preview: Picture): Smears | null {
  const { width, height, lab } = image;
  if (card.area < 0.04 * width * height) return null;
  const inside = pixelsIn(shrunken(card.corners, 0.06), width, height);
  const rim = inside.filter((_, index) => index % 7 === 0);
  const ground = [0, 1, 2].map((axis) => upperMedian(rim, lab, axis));
  if (ground[0]! < 45) return null;
  const of = new Uint8Array(width * height);
  const bare: number[] = [];
  for (const pixel of inside) {
    const apart = Math.hypot(
      lab[3 * pixel]! - ground[0]!,
      lab[3 * pixel + 1]! - ground[1]!,
      lab[3 * pixel + 2]! - ground[2]!,
    );
    if (apart > INKED) of[pixel] = 1;
    else bare.push(pixel);
  }
  if (bare.length < 0.4 * inside.length) return null;
  const regions = regionsOf(withoutThin({ width, height, of }, 1), LEAST_SMEAR * card.area);
  if (regions.length === 0) return null;
  return {
    smears: joinedBoxes(regions, card.corners, width),
    patch: patchOfPixels(preview, bare),
  };
}

/** The card is lighter than most inks, so the median of the lighter half tells its ground. */
function upperMedian(pixels: Int32Array, lab: Float32Array, axis: number): number {
  const byLight = Int32Array.from(pixels).sort((p, q) => lab[3 * p]! - lab[3 * q]!);
  const upper = byLight.subarray(byLight.length >> 1);
  return median(Float32Array.from(upper, (pixel) => lab[3 * pixel + axis]!));
}

interface Box {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

/** Boxes along the card's sides around the smears; strokes that lie on each other become one. */
function joinedBoxes(
  regions: readonly Region[],
  card: Quad<'photo'>,
  width: number,
): Quad<'photo'>[] {
  const toPhoto = homographyOf(rectangleQuad<'sheet'>(0, 0, 1, 1), card);
  const toCard = inverseHomography(toPhoto);
  const boxes: Box[] = [];
  for (const { pixels } of regions) {
    const box: Box = { left: 1, top: 1, right: 0, bottom: 0 };
    for (const pixel of pixels) {
      const x = pixel % width;
      const place = applyHomography(toCard, { x: x + 0.5, y: (pixel - x) / width + 0.5 });
      box.left = Math.min(box.left, place.x);
      box.right = Math.max(box.right, place.x);
      box.top = Math.min(box.top, place.y);
      box.bottom = Math.max(box.bottom, place.y);
    }
    boxes.push(box);
  }
  for (let i = 0; i < boxes.length; i++)
    for (let j = boxes.length - 1; j > i; j--) {
      const [p, q] = [boxes[i]!, boxes[j]!];
      const meet =
        Math.min(p.right, q.right) > Math.max(p.left, q.left) &&
        Math.min(p.bottom, q.bottom) > Math.max(p.top, q.top);
      if (!meet) continue;
      boxes[i] = {
        left: Math.min(p.left, q.left),
        top: Math.min(p.top, q.top),
        right: Math.max(p.right, q.right),
        bottom: Math.max(p.bottom, q.bottom),
      };
      boxes.splice(j, 1);
      j = boxes.length;
    }
  return boxes.map(({ left, top, right, bottom }) => {
    const quad = rectangleQuad<'sheet'>(left, top, right - left, bottom - top);
    return quad.map((corner) => applyHomography(toPhoto, corner)) as unknown as Quad<'photo'>;
  });
}
