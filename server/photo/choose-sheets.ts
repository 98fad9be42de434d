import type { Quad } from '../geometry/points.ts';
import { isLikeSheet } from './find-sheets.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import { freeOfLines } from './free-of-lines.ts';
import { holesIn } from './holes.ts';
import { isSeenInParts, leftOver, notWithin, strewnLeft, unexplained } from './left-over.ts';
import { isGrownTogether, withoutBlocks } from './looks-divided.ts';
import {
  notesOnCutOff,
  notesOnEmptyPlaces,
  notesOnLeftOver,
  notesOnSmall,
} from './notes-on-left-out.ts';
import type { PhotoAsk } from './picture.ts';
import { fromEdges } from './sheets-from-edges.ts';
import { aboutShreds } from './about-shreds.ts';
import { apartQuads } from './apart-quads.ts';
import type { Region } from './regions.ts';
import { GROUPED, byMotifs, sheetsOfMotifs } from './sheets-of-motifs.ts';
import { goesOnOutside, shredsOver, strewnOver } from './strewn.ts';
import { SHEET_PART } from './sheet-sizes.ts';
import { isPlain, pixelsOutside, untold } from './untold.ts';
import { usualArea } from './usual-area.ts';
import type { Patch } from './white-card.ts';

export interface Chosen {
  readonly sheets: readonly Candidate[];
  readonly others: readonly Candidate[];
  readonly notes: readonly string[];
  /** What may be a sheet and could not be told: she is asked to drag the corners. */
  readonly unsure?: readonly Candidate[];
  /** Where nothing says that a sheet lies but the grain: nothing, unless one turns out to fit there. */
  readonly tried?: readonly Candidate[];
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
export function chooseSheets(seen: Overview, ask: PhotoAsk): Chosen {
  const overview = freeOfLines(seen, ask);
  const { candidates, image } = overview;
  const shaped = candidates.filter(
    ({ corners, area }) =>
      area > SHEET_PART * image.width * image.height &&
      isLikeSheet(corners, ask.sheetMillimetres) &&
      !isGrownTogether(corners, overview),
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
  const nearRim = (strewn?.atRim ?? []).filter((region) => !goesOnOutside(region, image, one));
  const grouped = [
    ...sheetsOfMotifs(strewn?.inside ?? [], told, one, image.width, ask, GROUPED),
    ...sheetsOfMotifs(nearRim, told, one, image.width, ask, GROUPED).filter(
      ({ area, corners }) =>
        area > FULL * one && isLikeSheet(corners, ask.sheetMillimetres, SQUARELY),
    ),
  ];
  const known = [...told, ...grouped];
  const shredded = strewn === null ? [] : shredsOver(overview, known, one);
  const outside = shredded.filter((shreds) => goesOnOutside(shreds, image, one));
  const shreds = shredded.filter((region) => !outside.includes(region));
  const sheets = [...known, ...sheetsOfMotifs(shreds, known, one, image.width, ask, 0)];
  if (sheets.length > MOST) return { sheets: [], others: [], notes: [TOO_MANY] };
  const others = apartQuads(
    candidates.filter((candidate) => !whole.includes(candidate)),
    sheets.map(({ corners }) => corners),
  );
  const left = leftOver(overview, sheets);
  const maybe = [
    ...left
      .filter(({ area }) => area > 0.5 * one && area < 1.8 * one)
      .filter(({ corners }) => isLikeSheet(corners, ask.sheetMillimetres, 0.4)),
    ...aboutShreds(shreds, sheets, one, image.width),
  ];
  const perhaps = maybe.filter(({ corners }) => liesIn(corners, image));
  const holes = holesIn(overview, sheets, [...others, ...perhaps]);
  const lastSeen = untold(
    overview,
    [
      ...sheets,
      ...perhaps,
      ...holes.filled,
      ...others.filter(({ corners, area }) => area < CARD * one || isPlain(image, corners)),
    ].map(({ corners }) => corners),
    sheets,
    one,
  );
  const unsure = [
    ...perhaps,
    ...holes.filled,
    ...lastSeen.filter(({ corners }) => liesIn(corners, image)),
  ];
  const accounted = [...sheets, ...unsure];
  const toldAt = accounted.map(({ corners }) => corners);
  const isPaper = (region: Region, beyond: readonly Quad<'photo'>[] = []): boolean =>
    pixelsOutside(region, image.width, beyond) > CUT_OFF * one;
  return {
    sheets,
    others,
    unsure,
    tried: holes.otherGrain,
    notes: [
      ...notesOnCutOff(
        [
          ...overview.cutOff.filter((region) => isPaper(region, toldAt)),
          ...notWithin(strewn?.atRim ?? [], [...sheets, ...perhaps]).filter((region) =>
            isPaper(region),
          ),
          ...outside.filter((region) => isPaper(region)),
        ],
        [
          ...holes.cutOff,
          ...[...maybe, ...lastSeen]
            .filter((place) => !unsure.includes(place))
            .map(({ corners }) => corners),
        ],
      ),
      ...notesOnLeftOver(
        Math.max(
          leftOver(overview, accounted).reduce((sum, { pixels }) => sum + pixels, 0),
          strewnLeft(strewn?.inside ?? [], accounted),
        ) / one,
        holes.beyond.length,
      ),
      ...notesOnEmptyPlaces(holes.empty.length),
      ...notesOnSmall(accounted.length > 0 ? 0 : tooSmall(overview, ask)),
    ],
  };
}

/** Twice as many as she is asked to lay at most. */
const MOST = 24;
const TOO_MANY =
  'So many things of one shape are more likely the print of one paper than sheets; photograph it again with the table around it, at most twelve sheets at a time.';

/** How many things have a sheet's shape, but are too small in the picture. */
function tooSmall({ candidates, image }: Overview, { sheetMillimetres }: PhotoAsk): number {
  return candidates.filter(
    ({ corners, area }) =>
      area <= SHEET_PART * image.width * image.height && isLikeSheet(corners, sheetMillimetres),
  ).length;
}

/** Part of a sheet's area from which motifs near the rim are those of a whole sheet, and none lie outside. */
const FULL = 0.85;
/** Part of a sheet's area of a thing at the rim, beyond what is told already, from which a paper is cut off there. */
const CUT_OFF = 0.12;
/** Part of a sheet's area up to which another four-cornered thing is a card; a larger one is one where it is plain. */
const CARD = 0.5;
/** How far its shape may be off, as a logarithm. */
const SQUARELY = 0.08;

function liesIn(corners: Quad<'photo'>, { width, height }: Overview['image']): boolean {
  return corners.every(
    ({ x, y }) => x > -OVER && y > -OVER && x < width + OVER && y < height + OVER,
  );
}

/** Pixels of the preview by which a guessed corner may lie outside the picture. */
const OVER = 6;
