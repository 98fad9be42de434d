/**
 * Advance widths of the letters from space to ~ in thousandths of the font's height, read from the font
 * that the guide is printed in (Atkinson Hyperlegible, regular and bold), so that lines can be broken and
 * aligned without the font at hand.
 */
export const WIDTHS = {
  plain: [
    280, 281, 301, 655, 594, 927, 705, 160, 300, 300, 433, 602, 205, 368, 205, 377, 648, 402, 549,
    574, 614, 583, 598, 510, 615, 598, 205, 205, 553, 602, 553, 520, 780, 626, 619, 656, 673, 567,
    548, 710, 690, 414, 510, 627, 539, 820, 689, 727, 601, 753, 618, 596, 558, 690, 589, 840, 623,
    595, 607, 315, 377, 315, 552, 396, 268, 526, 566, 500, 564, 539, 311, 560, 546, 278, 254, 490,
    239, 841, 546, 552, 566, 576, 340, 471, 324, 536, 441, 654, 461, 429, 460, 319, 233, 319, 555,
  ],
  bold: [
    320, 283, 410, 783, 619, 977, 702, 222, 366, 366, 434, 618, 243, 374, 243, 442, 652, 448, 586,
    605, 626, 612, 632, 543, 625, 561, 243, 243, 573, 618, 573, 614, 754, 690, 639, 673, 686, 580,
    544, 719, 679, 458, 560, 659, 537, 842, 700, 764, 626, 781, 654, 619, 617, 663, 656, 883, 699,
    687, 621, 333, 442, 333, 589, 430, 314, 553, 596, 520, 596, 566, 367, 597, 572, 315, 259, 567,
    314, 886, 572, 573, 596, 601, 372, 534, 379, 570, 526, 723, 533, 518, 516, 370, 234, 370, 533,
  ],
} as const;

/** Height of a capital letter, as a part of the font's height. */
export const CAPITAL = 0.668;

const FIRST = 32;
/** Letters beyond the table count as wide ones. */
const OTHER = 600;

/** Width of a text in mm, without kerning; fractions count as they are written out. */
export function plainWidth(text: string, size: number, bold = false): number {
  const widths: readonly number[] = bold ? WIDTHS.bold : WIDTHS.plain;
  let sum = 0;
  for (const letter of text) sum += widths[letter.codePointAt(0)! - FIRST] ?? OTHER;
  return (sum * size) / 1000;
}
