import { BLADE_REMINDER } from './cautions.ts';
import type { Mark, Outline } from './drawing.ts';
import { disc, rectangle } from './drawing.ts';
import { linesOf, widthOf } from './letters.ts';
import { HAIR, INK, PAPER, SIZES, SOFT, TINT } from './look.ts';

/** A page of the guide: marks in mm from the upper left corner of PAGE. */
export interface GuidePage {
  /** What the page is, for outlines and for the screen. */
  readonly name: string;
  readonly marks: readonly Mark[];
}

/** The part of a page that both US letter and A4 can print: 7 1/2 x 10 in. */
export const PAGE = { width: 190.5, height: 254 } as const;

/** Where the body of a page starts and ends, under its head and above its foot. */
export const BODY = { top: 21, bottom: 240 } as const;

export const LEADING = 1.24;

/** A block of marks with the height that it takes. */
export interface Block {
  readonly marks: readonly Mark[];
  readonly height: number;
  /** Air over it where it does not begin a column. */
  readonly over?: number;
}

export interface TextStyle {
  readonly size?: number;
  readonly bold?: boolean;
  readonly colour?: string;
}

/** A paragraph broken to a width; its upper edge lies at y. */
export function paragraph(
  text: string,
  x: number,
  y: number,
  width: number,
  { size = SIZES.body, bold = false, colour = INK }: TextStyle = {},
): Block {
  const lines = linesOf(text, width, size, bold);
  return {
    marks: lines.map((line, index) => ({
      kind: 'words',
      x,
      y: y + size * (0.82 + index * LEADING),
      text: line,
      size,
      bold,
      colour,
    })),
    height: lines.length * size * LEADING,
  };
}

/** A number on a dark disc, as cuts and steps are numbered. */
export function badge(text: string, x: number, y: number, radius: number, fill = INK): Mark[] {
  const size = text.length > 1 ? radius * 1.15 : radius * 1.4;
  return [
    { kind: 'area', corners: disc(x, y, radius), fill, edge: { width: 0.5, colour: PAPER } },
    {
      kind: 'words',
      x,
      y: y + size * 0.335,
      text,
      size,
      bold: true,
      align: 'middle',
      colour: PAPER,
    },
  ];
}

/** An arrow that points up, its middle at x, y. */
export function upArrow(x: number, y: number, height: number): Outline {
  const [h, w] = [height / 2, height * 0.36];
  return [
    { x, y: y - h },
    { x: x + w, y: y - h + w * 1.1 },
    { x: x + w * 0.36, y: y - h + w * 1.1 },
    { x: x + w * 0.36, y: y + h },
    { x: x - w * 0.36, y: y + h },
    { x: x - w * 0.36, y: y - h + w * 1.1 },
    { x: x - w, y: y - h + w * 1.1 },
  ];
}

/** A tinted box with a caution or a note, a bar at its left. */
export function noteBox(text: string, x: number, y: number, width: number): Block {
  const inner = paragraph(text, x + 4.5, y + 2, width - 7, { size: SIZES.note });
  const height = inner.height + 4;
  return {
    marks: [
      { kind: 'area', corners: rectangle(x, y, width, height), fill: TINT },
      { kind: 'area', corners: rectangle(x, y, 1.4, height), fill: INK },
      ...inner.marks,
    ],
    height,
  };
}

/** A block under a head of its own, within a page. */
export function headed(head: string, block: Block): Block {
  const high = 8.6;
  return {
    marks: [
      { kind: 'words', x: 0, y: 5, text: head, size: SIZES.large, bold: true },
      { kind: 'group', x: 0, y: high, marks: block.marks },
    ],
    height: high + block.height,
  };
}

/** Under the head of a page on which a blade is used. */
export function bladeReminder(): Mark {
  return { kind: 'words', x: 0, y: 17.8, text: BLADE_REMINDER, size: SIZES.small, colour: SOFT };
}

/** At the right of the same line: how the drawings of the page are to be read. */
export function drawingReminder(text: string): Mark {
  return {
    kind: 'words',
    x: PAGE.width,
    y: 17.8,
    text,
    size: SIZES.small,
    colour: SOFT,
    align: 'right',
  };
}

export function ruleAcross(x: number, y: number, width: number, colour = HAIR): Mark {
  return { kind: 'line', from: { x, y }, to: { x: x + width, y }, width: 0.25, colour };
}

/** Puts head and foot on pages: the title, what the guide is for, and the page's number. */
export function framed(pages: readonly GuidePage[], title: string): GuidePage[] {
  return pages.map((page, index) => ({
    name: page.name,
    marks: [
      { kind: 'words', x: 0, y: 9, text: page.name, size: headSize(page.name), bold: true },
      ruleAcross(0, 14.5, PAGE.width, INK),
      ...page.marks,
      ruleAcross(0, PAGE.height - 6, PAGE.width),
      { kind: 'words', x: 0, y: PAGE.height - 1.2, text: title, size: SIZES.small, colour: SOFT },
      {
        kind: 'words',
        x: PAGE.width,
        y: PAGE.height - 1.2,
        text: `Page ${index + 1} of ${pages.length}`,
        size: SIZES.small,
        align: 'right',
        colour: SOFT,
      },
    ],
  }));
}

function headSize(text: string): number {
  const width = widthOf(text, SIZES.head, true);
  return width <= PAGE.width ? SIZES.head : (SIZES.head * PAGE.width) / width;
}
