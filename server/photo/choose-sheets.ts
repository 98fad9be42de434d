import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { contains, polygonArea } from '../geometry/polygon.ts';
import { isConvex, rectangleQuad, sidesOf } from '../geometry/quad.ts';
import { isLikeSheet, middleOf } from './find-sheets.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import { edgesOf } from './edges.ts';
import type { Edges } from './edges.ts';
import { dividedBlock } from './grown-together.ts';
import { isGrownTogether, withoutBlocks } from './looks-divided.ts';
import type { PhotoAsk } from './picture.ts';
import { quadOf } from './region-quad.ts';
import type { Region } from './regions.ts';
import { apartQuads, gridOf, quadsFromLines } from './sheets-from-lines.ts';
import type { SidePair } from './sheets-from-lines.ts';
import { median } from './surface.ts';
import { shredsOver, strewnOver } from './strewn.ts';
import { straightLines } from './straight-lines.ts';
import type { StraightLine } from './straight-lines.ts';
import { shrunken } from './white-card.ts';
import type { Patch } from './white-card.ts';

export interface Chosen {
  readonly sheets: readonly Candidate[];
  readonly others: readonly Candidate[];
  readonly notes: readonly string[];
  /** What may be a sheet and could not be told: she is asked to drag the corners. */
  readonly unsure?: readonly Candidate[];
  /** Smears of ink, in pixels of the preview, and the white card they lie on. */
  readonly smears?: readonly Quad<'photo'>[];
  readonly white?: { readonly corners: Quad<'photo'>; readonly patch: Patch };
}

/**
 * Which of the things on the table are the sheets.
 *
 * Whole regions of a sheet's shape come first and tell how large a sheet is in this photo. What
 * they leave unexplained (sheets grown together over a narrow gap, sheets that look like the table) is
 * put together from straight lines.
 */
export function chooseSheets(overview: Overview, ask: PhotoAsk): Chosen {
  const { candidates, image } = overview;
  const shaped = candidates.filter(
    ({ corners }) =>
      isLikeSheet(corners, ask.sheetMillimetres) && !isGrownTogether(corners, overview),
  );
  const likely = withoutBlocks(shaped, overview);
  const usual = usualArea(likely);
  const sized = likely.filter(({ area }) => area > 0.6 * usual && area < 1.7 * usual);
  const whole = [...sized, ...byMotifs(overview, sized, usual, ask)];
  const rest = unexplained(overview, whole);
  const isLeft =
    rest > 0.35 * (usual === 0 ? rest : usual) || isSeenInParts(overview, whole, usual);
  const added = isLeft ? fromEdges(overview, whole, usual, ask) : [];
  const told = [...whole, ...added];
  const one = told[0]?.area ?? (usual === 0 ? 0.1 * image.width * image.height : usual);
  const strewn = usual === 0 && added.length === 0 ? null : strewnOver(overview, told, one);
  const grouped = sheetsOfMotifs(strewn?.inside ?? [], told, one, image.width, ask, GROUPED);
  const known = [...told, ...grouped];
  const shreds = strewn === null ? [] : shredsOver(overview, known, one);
  const sheets = [...known, ...sheetsOfMotifs(shreds, known, one, image.width, ask, 0)];
  const others = apartQuads(
    candidates.filter((candidate) => !whole.includes(candidate)),
    sheets.map(({ corners }) => corners),
  );
  const left = leftOver(overview, sheets);
  const unsure = [
    ...left
      .filter(({ area }) => area > 0.5 * one && area < 1.8 * one)
      .filter(({ corners }) => isLikeSheet(corners, ask.sheetMillimetres, 0.4)),
    ...aboutShreds(shreds, sheets, one, image.width),
  ];
  return {
    sheets,
    others,
    unsure,
    notes: [
      ...notesOnCutOff([...overview.cutOff, ...(strewn?.atRim ?? [])], one),
      ...notesOnLeftOver(
        Math.max(
          left.reduce((sum, { pixels }) => sum + pixels, 0),
          strewnLeft(strewn?.inside ?? [], sheets),
        ) / one,
        unsure.length,
      ),
    ],
  };
}

/** Sheets of which only the motifs stand out from the table, of the size that the others tell. */
function byMotifs(
  overview: Overview,
  sized: readonly Candidate[],
  usual: number,
  ask: PhotoAsk,
): Candidate[] {
  // Without a sheet that stands alone a single motif could pass for one.
  if (sized.length === 0) return [];
  const likely = overview.motifs.filter(
    ({ corners, area }) =>
      isLikeSheet(corners, ask.sheetMillimetres) && area > 0.75 * usual && area < 1.25 * usual,
  );
  return apartQuads(
    likely,
    sized.map(({ corners }) => corners),
  );
}

/** Motifs that lie together in the outline of a sheet, of which neither ground nor border was seen. */
function sheetsOfMotifs(
  strewn: readonly Region[],
  told: readonly Candidate[],
  one: number,
  width: number,
  ask: PhotoAsk,
  fill: number,
): Candidate[] {
  const quads = strewn.flatMap((region): Candidate[] => {
    const quad = quadOf(region, width);
    if (quad === null || quad.fill < fill || !isConvex(quad.corners)) return [];
    const area = polygonArea(quad.corners);
    const isSized = area > 0.6 * one && area < 1.3 * one;
    return isSized && isLikeSheet(quad.corners, ask.sheetMillimetres, 0.25)
      ? [{ ...quad, area, byMotifs: true, loose: true }]
      : [];
  });
  return apartQuads(
    quads,
    told.map(({ corners }) => corners),
  );
}

/** Where shreds lie that make no outline: a sheet like the nearest one, laid over their middle. */
function aboutShreds(
  shreds: readonly Region[],
  sheets: readonly Candidate[],
  one: number,
  width: number,
): Candidate[] {
  return shreds.flatMap(({ pixels }): Candidate[] => {
    if (pixels.length < SHREDS * one) return [];
    const middle = {
      x: median(Float32Array.from(pixels, (pixel) => pixel % width)),
      y: median(Float32Array.from(pixels, (pixel) => Math.floor(pixel / width))),
    };
    const away = ({ corners }: Candidate): number => {
      const { x, y } = middleOf(corners);
      return Math.hypot(x - middle.x, y - middle.y);
    };
    const [nearest] = [...sheets].sort((p, q) => away(p) - away(q));
    if (nearest === undefined || away(nearest) < 0.6 * Math.sqrt(one)) return [];
    const { x, y } = middleOf(nearest.corners);
    const corners = nearest.corners.map((corner) => ({
      x: corner.x - x + middle.x,
      y: corner.y - y + middle.y,
    })) as unknown as Quad<'photo'>;
    return [{ corners, area: nearest.area, fill: 0 }];
  });
}

/** Part of its quad that a group of motifs fills at least. */
const GROUPED = 0.72;

/** Pixels of strewn things that lie in no sheet. */
function strewnLeft(strewn: readonly Region[], sheets: readonly Candidate[]): number {
  return strewn
    .filter(({ left, right, top, bottom }) => {
      const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
      return !sheets.some(({ corners }) => contains(corners, middle));
    })
    .reduce((sum, { pixels }) => sum + pixels.length, 0);
}

/** Pixels of things that are not table and not yet told to be sheets. */
function unexplained({ unclear, candidates }: Overview, known: readonly Candidate[]): number {
  const unclearArea = unclear.reduce((sum, { pixels }) => sum + pixels.length, 0);
  const oddArea = candidates
    .filter((candidate) => !known.includes(candidate))
    .reduce((sum, { area }) => sum + area, 0);
  const divided = known
    .filter((sheet) => !candidates.includes(sheet))
    .reduce((sum, { area }) => sum + area, 0);
  return Math.max(0, unclearArea + oddArea - divided);
}

/** A sheet that looks like the table for the most part: shreds of it are left, or its motifs alone. */
function isSeenInParts(overview: Overview, whole: readonly Candidate[], usual: number): boolean {
  if (usual === 0) return false;
  const seen = overview.candidates.filter((candidate) => whole.includes(candidate));
  return (
    unexplained({ ...overview, candidates: seen }, whole) > SHREDS * usual ||
    strewnOver(overview, whole, usual).inside.length > 0
  );
}

/** Shreds of this part of a sheet make it worth while to look for straight lines around them. */
const SHREDS = 0.1;

/** The area that most of the covered table agrees on. */
function usualArea(candidates: readonly Candidate[]): number {
  let best = 0;
  let most = -1;
  for (const { area } of candidates) {
    const alike = candidates.filter((other) => other.area > 0.65 * area && other.area < 1.5 * area);
    const covered = alike.reduce((sum, other) => sum + other.area, 0);
    if (covered > most) {
      most = covered;
      best = area;
    }
  }
  return best;
}

/** Blocks of sheets are divided first; what is not told by that is put together from lines. */
function fromEdges(
  overview: Overview,
  whole: readonly Candidate[],
  usual: number,
  ask: PhotoAsk,
): Candidate[] {
  const edges = edgesOf(overview.image);
  const least = Math.max(1.0, 1.5 * overview.table.roughness);
  const size = ask.sheetMillimetres;
  const blocks =
    size === null
      ? []
      : overview.blocks
          .filter(({ pixels }) => usual === 0 || pixels.length > 1.4 * usual)
          .flatMap((region) => dividedBlock(region, edges, least, size.width / size.height, usual));
  const divided = apartQuads(
    blocks,
    whole.map(({ corners }) => corners),
  );
  const known = [...whole, ...divided];
  const left = unexplained(overview, known);
  const one = known[0]?.area ?? left;
  return left > 0.35 * one || known.length === 0 || isSeenInParts(overview, known, one)
    ? [...divided, ...fromLines(overview, edges, known, ask)]
    : divided;
}

/** Lines looked at, most borne out first; more only cost time. */
const MOST_LINES = 500;

function fromLines(
  overview: Overview,
  edges: Edges,
  whole: readonly Candidate[],
  ask: PhotoAsk,
): Candidate[] {
  const { table } = overview;
  const least = Math.max(1.0, 1.5 * table.roughness);
  const lines = straightLines(edges, least, MOST_LINES);
  const trial = (
    sizeAt: (place: PhotoPoint) => SidePair,
    there: readonly Candidate[],
  ): Candidate[] =>
    apartQuads(
      quadsFromLines(lines, edges, sizeAt, least, judgeOf(overview)),
      there.map(({ corners }) => corners),
    )
      .filter(({ least: weakest, mean }) => weakest > 0.3 && mean > 0.55)
      .map(({ corners, area, score }) => ({ corners, area, fill: score }));
  const first =
    whole.length > 0
      ? trial(nearestSize(whole), whole)
      : bestOver(sizesToTry(overview, lines, ask), (size) => trial(() => size, []));
  // What came first tells the size at each place better than a guess, so more may fit now.
  const sure = [...whole, ...first.filter(({ fill }) => fill > SURE)];
  if (sure.length === 0) return first;
  return [...sure.slice(whole.length), ...trial(nearestSize(sure), sure)];
}

/** Score from which a quad of lines tells the size of sheets. */
const SURE = 0.7;

/** How well a quad agrees with the table: low when bare table lies in it, above all along a side. */
function judgeOf({ table, image }: Overview): (corners: Quad<'photo'>) => number {
  const isBare = ({ x, y }: PhotoPoint): boolean =>
    table.reached[Math.floor(y) * image.width + Math.floor(x)] === 1;
  const part = (places: readonly PhotoPoint[]): number =>
    places.filter(isBare).length / places.length;
  return (corners) => {
    const rim = shrunken(corners, 0.03);
    const sides = rim.map((from, side) => {
      const to = rim[(side + 1) % 4]!;
      return part(
        Array.from({ length: 12 }, (_, k) => ({
          x: from.x + ((k + 0.5) / 12) * (to.x - from.x),
          y: from.y + ((k + 0.5) / 12) * (to.y - from.y),
        })),
      );
    });
    // A white sheet on a white table looks bare all over; that alone must not rule it out.
    const bare = part(gridOf(corners, 10));
    return 1 - 0.5 * bare - 0.25 * Math.max(0, Math.max(...sides) - bare);
  };
}

/** Sheets are all of one size, so the nearest one tells how large a sheet is hereabouts. */
function nearestSize(whole: readonly Candidate[]): (place: PhotoPoint) => SidePair {
  const known = whole.map(({ corners }) => {
    const [upper, right, lower, left] = sidesOf(corners);
    return { middle: middleOf(corners), width: (upper + lower) / 2, height: (left + right) / 2 };
  });
  return ({ x, y }) => {
    let [w, h, weight] = [0, 0, 0];
    for (const { middle, width, height } of known) {
      const near = 1 / (1 + (middle.x - x) ** 2 + (middle.y - y) ** 2);
      w += near * width;
      h += near * height;
      weight += near;
    }
    return { width: w / weight, height: h / weight };
  };
}

/** Sizes that a sheet may have when no sheet stands alone: what grown-together regions divide into, and long lines. */
function sizesToTry(
  { candidates, unclear }: Overview,
  lines: readonly StraightLine[],
  ask: PhotoAsk,
): SidePair[] {
  const aspect =
    ask.sheetMillimetres === null ? 1 : ask.sheetMillimetres.width / ask.sheetMillimetres.height;
  const sizes: SidePair[] = [];
  const boxes = [
    ...candidates.map(({ corners }) => {
      const [upper, right, lower, left] = sidesOf(corners);
      return { width: (upper + lower) / 2, height: (left + right) / 2 };
    }),
    ...unclear.map(({ left, right, top, bottom }) => ({
      width: right - left,
      height: bottom - top,
    })),
  ];
  for (const { width, height } of boxes)
    for (let n = 1; n <= 6; n++)
      for (let m = 1; m <= 6; m++) {
        const off = Math.abs(Math.log(width / n / (height / m) / aspect));
        if (off < 0.07) sizes.push({ width: width / n, height: height / m });
      }
  for (const { pieces } of lines.slice(0, 60))
    for (const [from, to] of pieces)
      if (to - from > 60) sizes.push({ width: to - from, height: (to - from) / aspect });
  sizes.sort((p, q) => q.width - p.width);
  const apart: SidePair[] = [];
  for (const size of sizes)
    if (apart.every((other) => other.width / size.width > 1.025)) apart.push(size);
  return apart.filter(({ width }) => width > 50).slice(0, 16);
}

/** The size whose quads cover most, well borne out quads counting more. */
function bestOver(sizes: readonly SidePair[], trial: (size: SidePair) => Candidate[]): Candidate[] {
  let best: Candidate[] = [];
  let most = 0;
  for (const size of sizes) {
    const quads = trial(size);
    const value = quads.reduce((sum, { area, fill }) => sum + area * (fill - 0.45), 0);
    if (value > most) {
      most = value;
      best = quads;
    }
  }
  return best;
}

interface LeftOver extends Candidate {
  /** Pixels of it that lie in no sheet. */
  readonly pixels: number;
}

/** Unclear things on the table that no sheet accounts for. */
function leftOver({ unclear, image }: Overview, sheets: readonly Candidate[]): LeftOver[] {
  const { width } = image;
  return unclear.flatMap((region): LeftOver[] => {
    const some = region.pixels.filter((_, index) => index % 37 === 0);
    const free = some.filter((pixel) => {
      const place = { x: (pixel % width) + 0.5, y: Math.floor(pixel / width) + 0.5 };
      return !sheets.some(({ corners }) => contains(corners, place));
    });
    // A rim of shadow around a sheet that was told is nothing left over.
    if (free.length < 0.6 * some.length) return [];
    const { left, top, right, bottom } = region;
    const corners =
      quadOf(region, width)?.corners ??
      rectangleQuad<'photo'>(left, top, right - left + 1, bottom - top + 1);
    const area = polygonArea(corners);
    const pixels = (region.pixels.length * free.length) / some.length;
    return [{ corners, area, fill: region.pixels.length / area, pixels }];
  });
}

/** From how many sheets' worth of unclear things she is told. */
const WORTH_A_WORD = 0.3;

function notesOnLeftOver(sheets: number, unsure: number): string[] {
  if (sheets < WORTH_A_WORD || unsure > 0) return [];
  return [
    'Something else lies on the table that could not be told apart, perhaps another sheet; add it by its corners, or take the photo again with a finger’s width around each sheet.',
  ];
}

function notesOnCutOff(cutOff: readonly Region[], usual: number): string[] {
  const large = cutOff.filter(({ pixels }) => pixels.length > 0.12 * usual);
  if (large.length === 0) return [];
  return [
    large.length === 1
      ? 'One paper lies partly outside the picture and was left out; photograph it again whole.'
      : `${large.length} papers lie partly outside the picture and were left out; photograph them again whole.`,
  ];
}
