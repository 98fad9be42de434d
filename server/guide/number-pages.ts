import { toMillimetres } from '../lengths/length.ts';
import type { Sheet, Side } from '../pad/pad.ts';
import type { GuideAsk } from './ask.ts';
import { rectangle } from './drawing.ts';
import type { Extent, Mark } from './drawing.ts';
import type { Facts } from './facts.ts';
import { chapter } from './flow.ts';
import { shortened } from './letters.ts';
import { HAIR, SIZES, SOFT } from './look.ts';
import { BODY, PAGE, paragraph } from './page.ts';
import type { Block, GuidePage } from './page.ts';
import { plainFace } from './plain-face.ts';
import { isSpared } from './parts-words.ts';

const HOW =
  'Nothing on your papers tells their number. Find each of these sheets by its two sides and stick a note with its number or name on it: by that it is called in all that follows. Do not write on the paper itself, since either side may show.';

const COLUMNS = 3;
const GAP = 7;
const WIDTH = (PAGE.width - (COLUMNS - 1) * GAP) / COLUMNS;
/** Between the two sides of a sheet. */
const APART = 1.5;
const SIDE = (WIDTH - APART) / 2;
/** Room for the name over the two sides, for their names under them, and down to the next sheet. */
const [HEAD, FOOT, NEXT] = [6.2, 4.4, 4.5] as const;

/**
 * The first work at the table: every sheet that is cut, with both its sides and the number to put on it. `part` of the
 * size that its pictures could have is taken, to make room for what stands under them.
 */
export function numberPages(ask: GuideAsk, facts: Facts, part = 1): GuidePage[] {
  const { how, top, high, perPage, size } = gridOf(ask, part);
  const sheets = sheetsToNumber(ask, facts);
  const pages: Mark[][] = [];
  for (let from = 0; from < sheets.length; from += perPage) {
    const cells = sheets.slice(from, from + perPage).map((one, index): Mark => ({
      kind: 'group',
      x: (index % COLUMNS) * (WIDTH + GAP),
      y: top + Math.floor(index / COLUMNS) * high,
      marks: cell(ask, one, size),
    }));
    pages.push([...how.marks, ...cells]);
  }
  return chapter('First, number your sheets', pages);
}

/** Where the sheets end on their last page, in mm from its top. */
export function numbersEnd(ask: GuideAsk, facts: Facts, part: number): number {
  const { top, high, perPage } = gridOf(ask, part);
  const count = sheetsToNumber(ask, facts).length;
  const last = count === 0 ? 0 : ((count - 1) % perPage) + 1;
  return top + Math.ceil(last / COLUMNS) * high - NEXT;
}

interface SheetsGrid {
  readonly how: Block;
  readonly top: number;
  /** From one row to the next. */
  readonly high: number;
  readonly perPage: number;
  /** Of a side. */
  readonly size: Extent;
}

function gridOf(ask: GuideAsk, part: number): SheetsGrid {
  const how = paragraph(HOW, 0, BODY.top - 3.5, PAGE.width);
  const top = BODY.top + how.height + 1.5;
  const size = drawnSize(ask, part);
  const high = HEAD + size.height + FOOT + NEXT;
  const rows = Math.max(1, Math.floor((BODY.bottom + 6 - top + NEXT) / high));
  return { how, top, high, perPage: COLUMNS * rows, size };
}

interface Numbered {
  readonly sheet: Sheet;
  /** How many of it are cut. */
  readonly count: number;
}

/** The sheets that are cut, each design once, in the order of the pad. */
export function sheetsToNumber(ask: GuideAsk, { slots }: Facts): Numbered[] {
  const cut = slots.filter(({ slot }) => !isSpared(ask, slot));
  return ask.pad.sheets.flatMap((sheet) => {
    const count = cut.filter((one) => one.sheet.id === sheet.id).length;
    return count === 0 ? [] : [{ sheet, count: count * (ask.people ?? 1) }];
  });
}

/** A side as it is drawn: so much of what fits, in its own proportion. */
function drawnSize({ scheme }: GuideAsk, part: number): Extent {
  const [width, height] = [toMillimetres(scheme.sheet.width), toMillimetres(scheme.sheet.height)];
  const scale = part * Math.min(SIDE / width, SIDE / height);
  return { width: scale * width, height: scale * height };
}

function cell(ask: GuideAsk, { sheet, count }: Numbered, size: Extent): Mark[] {
  const more = count === 1 ? '' : `${count} of it`;
  const name = shortened(sheet.label, WIDTH - (more === '' ? 0 : 18), SIZES.large, true);
  return [
    { kind: 'words', x: 0, y: 4.4, text: name, size: SIZES.large, bold: true },
    { kind: 'words', x: WIDTH, y: 4.4, text: more, size: SIZES.small, align: 'right' },
    ...sideMarks(ask, sheet.front, 'front', 0, size),
    ...sideMarks(ask, sheet.back, 'back', size.width + APART, size),
  ];
}

function sideMarks(
  ask: GuideAsk,
  side: Side | null,
  face: string,
  x: number,
  { width, height }: Extent,
): Mark[] {
  const corners = rectangle(x, HEAD, width, height);
  const href = side === null ? null : ask.picture(side.id);
  const shown: Mark[] =
    href === null
      ? plainFace(side, x, HEAD, { width, height })
      : [{ kind: 'picture', href, x, y: HEAD, width, height }];
  const lacks = side === null ? ': no photo' : href === null ? ': no picture' : '';
  return [
    ...shown,
    { kind: 'area', corners, edge: { width: 0.2, colour: HAIR } },
    {
      kind: 'words',
      x,
      y: HEAD + height + 3.6,
      text: `${face}${lacks}`,
      size: SIZES.small,
      colour: SOFT,
    },
  ];
}
