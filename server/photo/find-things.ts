import type { Quad } from '../geometry/points.ts';
import { inReadingOrder } from '../geometry/quad.ts';
import { chooseSheets } from './choose-sheets.ts';
import type { Chosen } from './choose-sheets.ts';
import { byReading, isLikeSheet, overlook, overlookShadow, scaledQuad } from './find-sheets.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import { chooseSquares } from './choose-squares.ts';
import type { Found, OpenedPixels, PhotoAsk } from './picture.ts';
import { settleSheets } from './settle.ts';
import { surenessOf } from './sureness.ts';
import type { Patch } from './white-card.ts';
import { wholePicture } from './whole-picture.ts';

/** What was found in a photo, before any of it is laid flat. */
export interface FoundThings {
  /** In pixels of the photo as the camera made it. */
  readonly things: readonly Found[];
  /** Other four-cornered things on the table, in pixels of the preview: one may be the white card. */
  readonly others: readonly Candidate[];
  /** The white card on which smears lie, with what its bare part shows. */
  readonly white?: { readonly corners: Quad<'photo'>; readonly patch: Patch };
  /** Where papers were seen, whatever she showed, in pixels of the preview. */
  readonly papers: readonly Quad<'photo'>[];
  /** Pixels of the preview that show bare table. */
  readonly reached: Uint8Array;
  readonly notes: readonly string[];
}

/** The first half of readPhoto: where things lie. */
export function findThings(photo: OpenedPixels, ask: PhotoAsk): FoundThings {
  const shown = ask.tap?.corners;
  const { overview, chosen } = lookAt(photo, ask);
  const { sheets, unsure, others, notes, smears, white } = chosen;
  const things =
    shown === undefined
      ? byReading([
          ...settled(photo, ask, overview, byReading(sheets)),
          ...inFull(smears ?? [], photo),
          ...(unsure ?? []).map(({ corners }) => ({
            corners: scaledQuad(inReadingOrder(corners), photo.scale),
            confidence: 0.3,
            notes: [UNSURE],
          })),
        ])
      : shown.map((corners) => ({ corners, confidence: 1, notes: [] }));
  if (things.length === 0 && ask.look === 'sheets') {
    const whole = wholePicture(photo, ask.sheetMillimetres);
    // What was taken for table is paper then, and says nothing of the light.
    if (whole !== null)
      return {
        things: [whole],
        others: [],
        papers: [scaledQuad(whole.corners, 1 / photo.scale)],
        reached: new Uint8Array(overview.table.reached.length),
        notes: [],
      };
  }
  return {
    things,
    others,
    papers: ask.look === 'sheets' ? sheets.map(({ corners }) => corners) : [],
    reached: overview.table.reached,
    ...(white === undefined ? {} : { white }),
    notes: shown === undefined ? notes : [],
  };
}

interface Looked {
  readonly overview: Overview;
  readonly chosen: Chosen;
}

function lookAt(photo: OpenedPixels, ask: PhotoAsk): Looked {
  const overview = overlook(photo);
  if (ask.look === 'squares') return { overview, chosen: chooseSquares(overview, photo.preview) };
  const first = { overview, chosen: chooseSheets(overview, ask) };
  const inShadow = overlookShadow(overview);
  if (inShadow === null) return first;
  const second = { overview: inShadow, chosen: chooseSheets(inShadow, ask) };
  return tellsMore(second.chosen, first.chosen) ? second : first;
}

/** Whether more sheets are told, or as many with fewer places and sentences about the rest. */
function tellsMore(one: Chosen, other: Chosen): boolean {
  const open = ({ unsure, notes }: Chosen): number => (unsure?.length ?? 0) + notes.length;
  if (one.sheets.length !== other.sheets.length) return one.sheets.length > other.sheets.length;
  return open(one) <= open(other);
}

const UNSURE = 'Not sure of the edges of this sheet; please drag its corners.';

function settled(
  photo: OpenedPixels,
  ask: PhotoAsk,
  { table, image }: Overview,
  sheets: readonly Candidate[],
): Found[] {
  const size = ask.look === 'sheets' ? ask.sheetMillimetres : null;
  return settleSheets(photo, sheets, table, image, size).map((sheet, index) => {
    const sure = surenessOf(sheet, sheets[index]!.byMotifs === true);
    const confidence = isLikeSheet(sheet.corners, size) ? sure : 0.6 * sure;
    const notes = confidence < 0.5 ? [UNSURE] : [];
    const corners = scaledQuad(inReadingOrder(sheet.corners), photo.fullScale ?? 1);
    return { corners, confidence, notes };
  });
}

function inFull(smears: readonly Quad<'photo'>[], photo: OpenedPixels): Found[] {
  return smears.map((corners) => ({
    corners: scaledQuad(corners, photo.scale),
    confidence: 0.8,
    notes: [],
    smear: true,
  }));
}
