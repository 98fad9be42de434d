import type { Quad } from '../geometry/points.ts';
import { inReadingOrder } from '../geometry/quad.ts';
import { chooseSheets } from './choose-sheets.ts';
import type { Chosen } from './choose-sheets.ts';
import { aspectOf, byReading, isLikeSheet, overlook, scaledQuad } from './find-sheets.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import type { Found, OpenedPixels, PhotoAsk } from './picture.ts';
import { layOntoEdges } from './side-lines.ts';

/** What was found in a photo, before any of it is laid flat. */
export interface FoundThings {
  /** In pixels of the photo as the camera made it. */
  readonly things: readonly Found[];
  /** Other four-cornered things on the table, in pixels of the preview: one may be the white card. */
  readonly others: readonly Candidate[];
  /** Pixels of the preview that show bare table. */
  readonly reached: Uint8Array;
  readonly notes: readonly string[];
}

/** The first half of readPhoto: where things lie. */
export function findThings(photo: OpenedPixels, ask: PhotoAsk): FoundThings {
  const overview = overlook(photo);
  const shown = ask.tap?.corners;
  const { sheets, others, notes } =
    ask.look === 'sheets' ? chooseSheets(overview, ask) : chooseSquares(overview);
  const things =
    shown === undefined
      ? byReading(sheets).map((sheet) => settle(photo, ask, sheet))
      : shown.map((corners) => ({ corners, confidence: 1, notes: [] }));
  return {
    things,
    others,
    reached: overview.table.reached,
    notes: shown === undefined ? notes : [],
  };
}

function chooseSquares({ candidates }: Overview): Chosen {
  return {
    sheets: candidates.filter(({ corners }) => aspectOf(corners) < 2.5),
    others: [],
    notes: [],
  };
}

function settle(photo: OpenedPixels, ask: PhotoAsk, sheet: Candidate): Found {
  const fullScale = photo.fullScale ?? 1;
  const perPreview = photo.scale / fullScale;
  const rough = scaledQuad(sheet.corners, perPreview);
  const first = layOntoEdges(photo.full, rough, Math.max(6, 4 * perPreview));
  const { corners, borne } = layOntoEdges(photo.full, first.corners, Math.max(2, 0.8 * perPreview));
  const full: Quad<'photo'> = scaledQuad(inReadingOrder(corners), fullScale);
  const sides = borne.reduce((sum, side) => sum + side, 0) / 4;
  const weakest = Math.min(...borne);
  const fits = isLikeSheet(corners, ask.sheetMillimetres) ? 1 : 0.6;
  const confidence = Math.max(0, Math.min(1, fits * (0.3 + 0.4 * sides + 0.3 * weakest)));
  const notes =
    confidence < 0.5 ? ['Not sure of the edges of this sheet; please drag its corners.'] : [];
  return { corners: full, confidence, notes };
}
