import type { Quad } from '../geometry/points.ts';
import { inReadingOrder } from '../geometry/quad.ts';
import { chooseSheets } from './choose-sheets.ts';
import type { Chosen } from './choose-sheets.ts';
import { byReading, isLikeSheet, overlook, overlookShadow, scaledQuad } from './find-sheets.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import { chooseSquares } from './choose-squares.ts';
import { notesOnRim } from './notes-on-left-out.ts';
import type { Found, OpenedPixels, PhotoAsk } from './picture.ts';
import { settleSheets } from './settle.ts';
import type { Settled } from './settled.ts';
import { surenessOf } from './sureness.ts';
import type { Patch } from './white-card.ts';
import { withPlacesOf } from './two-looks.ts';
import { isPrintEverywhere } from './print-everywhere.ts';
import { isBesideTable, wholePicture } from './whole-picture.ts';

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
  const { overview, chosen, laid } = lookAt(photo, ask);
  const isFilled =
    shown === undefined && ask.look === 'sheets' && isPrintEverywhere(overview.image);
  const { sheets, unsure, others, notes, smears, white } = chosen;
  const things =
    shown === undefined
      ? byReading([
          ...laid,
          ...inFull(smears ?? [], photo),
          ...(unsure ?? []).map(({ corners }) => ({
            corners: scaledQuad(inReadingOrder(corners), photo.scale),
            confidence: 0.3,
            notes: [UNSURE],
          })),
        ])
      : shown.map((corners) => ({ corners, confidence: 1, notes: [] }));
  if ((things.length === 0 || isFilled) && ask.look === 'sheets') {
    const whole = wholePicture(photo, ask.sheetMillimetres);
    // What was taken for table is paper then, and says nothing of the light.
    if (whole !== null || isFilled)
      return {
        things: whole === null ? [] : [whole],
        others: [],
        papers: whole === null ? [] : [scaledQuad(whole.corners, 1 / photo.scale)],
        reached: new Uint8Array(overview.table.reached.length),
        notes: whole === null ? [FILLED] : [],
      };
  }
  return {
    things,
    others,
    papers: ask.look === 'sheets' ? sheets.map(({ corners }) => corners) : [],
    reached: overview.table.reached,
    ...(white === undefined ? {} : { white }),
    notes:
      shown === undefined
        ? [
            ...notes,
            ...notesOnRim(
              (unsure ?? []).map(({ corners }) => corners),
              overview.image,
            ),
            ...notesOnNothing(photo, ask, things, notes),
          ]
        : [],
  };
}

const FILLED =
  'One print fills the picture out to its rim; photograph the paper again whole, with a strip of table around it.';

interface Looked {
  readonly overview: Overview;
  readonly chosen: Chosen;
  /** The sheets among it, laid onto their edges. */
  readonly laid: readonly Found[];
}

/** The table as smooth light shows it; or parted by the edge of a shadow, where more of what lies there is sure then. */
function lookAt(photo: OpenedPixels, ask: PhotoAsk): Looked {
  const look = (overview: Overview): Looked => {
    const scrapsAreKnown = (ask.chipColours ?? ask.tap?.chips ?? []).length > 0;
    const chosen =
      ask.look === 'sheets'
        ? chooseSheets(overview, ask)
        : chooseSquares(overview, photo.preview, scrapsAreKnown);
    if (ask.tap?.corners !== undefined) return { overview, chosen, laid: [] };
    return { overview, ...settled(photo, ask, overview, chosen) };
  };
  const first = look(overlook(photo));
  if (ask.look === 'squares' || isClear(first)) return first;
  const inShadow = overlookShadow(first.overview);
  if (inShadow === null) return first;
  const second = look(inShadow);
  if (surenessIn(second) < surenessIn(first) + CLEARLY) return first;
  return { ...second, chosen: withPlacesOf(first.chosen, second.chosen) };
}

/** In sheets that are wholly sure: a second look that is as good as the first may have invented one. */
const CLEARLY = 0.3;

function isClear({ chosen: { unsure, notes }, laid }: Looked): boolean {
  return (
    laid.length > 0 &&
    (unsure ?? []).length + notes.length === 0 &&
    laid.every(({ confidence }) => confidence >= 0.5)
  );
}

function surenessIn({ laid }: Looked): number {
  return laid.reduce((sum, { confidence }) => sum + confidence, 0);
}

/** Where nothing at all was told, though a print shows beside a bare table. */
function notesOnNothing(
  { preview }: OpenedPixels,
  { look }: PhotoAsk,
  things: readonly Found[],
  notes: readonly string[],
): string[] {
  return look === 'sheets' && things.length + notes.length === 0 && isBesideTable(preview)
    ? ['A paper seems to reach outside the picture; photograph it again whole.']
    : [];
}

const UNSURE = 'Not sure of the edges of this sheet; please drag its corners.';

/** The sheets that were chosen, and those places that turned out to be sheets, laid onto edges. */
function settled(
  photo: OpenedPixels,
  ask: PhotoAsk,
  { table, image }: Overview,
  chosen: Chosen,
): Pick<Looked, 'chosen' | 'laid'> {
  const size = ask.look === 'sheets' ? ask.sheetMillimetres : null;
  const sheets = byReading(chosen.sheets);
  const unsure = chosen.unsure ?? [];
  const perhaps = [...unsure, ...(chosen.tried ?? [])];
  const places = perhaps.map(({ corners }) => inReadingOrder(corners));
  const { laid, added } = settleSheets(photo, sheets, table, image, size, places);
  const found = (sheet: Settled, byMotifs: boolean): Found => {
    const sure = surenessOf(sheet, byMotifs);
    const confidence = isLikeSheet(sheet.corners, size) ? sure : 0.6 * sure;
    const notes = confidence < 0.5 ? [UNSURE] : [];
    const corners = scaledQuad(inReadingOrder(sheet.corners), photo.fullScale ?? 1);
    return { corners, confidence, notes };
  };
  const perPreview = photo.scale / (photo.fullScale ?? 1);
  const come = added.map(({ corners, place }): Candidate => ({
    ...perhaps[place]!,
    corners: scaledQuad(corners, 1 / perPreview),
  }));
  return {
    chosen: {
      ...chosen,
      sheets: [...chosen.sheets, ...come],
      unsure: unsure.filter((_, at) => added.every(({ place }) => place !== at)),
    },
    laid: [
      ...laid.map((sheet, at) => found(sheet, sheets[at]!.byMotifs === true)),
      ...added.map((sheet) => found(sheet, false)),
    ],
  };
}

function inFull(smears: readonly Quad<'photo'>[], photo: OpenedPixels): Found[] {
  return smears.map((corners) => ({
    corners: scaledQuad(corners, photo.scale),
    confidence: 0.8,
    notes: [],
    smear: true,
  }));
}
