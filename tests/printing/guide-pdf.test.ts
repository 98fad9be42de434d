import PDFDocument from 'pdfkit';
import { describe, expect, test } from 'vitest';
import { picturesIn } from '../../server/guide/drawing.ts';
import { guidePages } from '../../server/guide/guide-pages.ts';
import { plainWidth } from '../../server/guide/letter-widths.ts';
import { encodeSwatch } from '../../server/images/encode-swatch.ts';
import { printPicture } from '../../server/images/print-picture.ts';
import { readFonts } from '../../server/printing/fonts.ts';
import { guidePdf } from '../../server/printing/guide-pdf.ts';
import { guideWorld, layoutsOf } from '../guide/world.ts';
import { chanceOf } from '../colour/drawn.ts';
import { contentsOf, linesIn } from './pdf-content.ts';

const pages = guidePages(guideWorld(layoutsOf('us').slice(0, 3)));
const latin1 = (pdf: Uint8Array): string => Buffer.from(pdf).toString('latin1');

/** 900 x 900: a 6 in side at 150 dots an inch, as full of detail as a print can be. */
async function swatch(seed: number): Promise<Uint8Array> {
  const chance = chanceOf(seed);
  const rgb = new Uint8Array(900 * 900 * 3);
  const colours = Array.from({ length: 6 }, () => [255 * chance(), 255 * chance(), 255 * chance()]);
  for (let y = 0; y < 900; y++)
    for (let x = 0; x < 900; x++) {
      const cell = Math.floor(x / 14) * 7 + Math.floor(y / 14) * 13;
      const colour = colours[(cell + (Math.hypot((x % 14) - 7, (y % 14) - 7) < 5 ? 1 : 0)) % 6]!;
      for (let c = 0; c < 3; c++)
        rgb[3 * (900 * y + x) + c] = Math.max(0, Math.min(255, colour[c]! + 12 * (chance() - 0.5)));
    }
  return printPicture(await encodeSwatch({ width: 900, height: 900, rgb }));
}

describe('the guide as a PDF', () => {
  test.each([
    ['letter', 612, 792],
    ['a4', 595.28, 841.89],
  ] as const)(
    'on %s six inches are 432 points long, inside the page',
    async (paper, width, height) => {
      const pdf = await guidePdf(pages, new Map(), paper);
      const box = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(latin1(pdf))!;
      expect(Number(box[1])).toBeCloseTo(width, 1);
      expect(Number(box[2])).toBeCloseTo(height, 1);
      const long = contentsOf(pdf)
        .flatMap(linesIn)
        .filter(
          ({ from, to }) => Math.abs(Math.abs(to[0] - from[0]) - 432) < 2 && from[1] === to[1],
        );
      expect(long.length).toBeGreaterThan(0);
      for (const { from, to } of long) {
        // Within 0.2 mm, which is 0.57 points; drawn from the same number it is far nearer.
        expect(Math.abs(to[0] - from[0] - 432)).toBeLessThan(0.01);
        expect(Math.min(from[0], to[0])).toBeGreaterThan(18);
        expect(Math.max(from[0], to[0])).toBeLessThan(width - 18);
      }
    },
  );

  test('asks the printer not to scale, and has a page for each of ours', async () => {
    const text = latin1(await guidePdf(pages, new Map(), 'letter'));
    expect(text).toMatch(/\/PrintScaling \/None/);
    expect(text.match(/\/Type \/Page\b/g)).toHaveLength(pages.length);
    expect(text).not.toMatch(/\/BaseFont \/Helvetica/);
    expect(text).toMatch(/\/BaseFont \/[A-Z]{6}\+AtkinsonHyperlegible/);
  });

  test('the same guide gives the same bytes', async () => {
    const [one, two] = [
      await guidePdf(pages, new Map(), 'a4'),
      await guidePdf(pages, new Map(), 'a4'),
    ];
    expect(Buffer.from(one).equals(Buffer.from(two))).toBe(true);
  });

  test('fifteen cards with their swatches stay under 10 MB, every picture stored once', async () => {
    const guide = guidePages(guideWorld(layoutsOf('us').slice(0, 15)));
    const names = [...new Set(guide.flatMap(({ marks }) => picturesIn(marks)))];
    const pictures = new Map(
      await Promise.all(names.map(async (name, index) => [name, await swatch(index + 1)] as const)),
    );
    const pdf = await guidePdf(guide, pictures, 'letter');
    const stored = [...pictures.values()].reduce((sum, bytes) => sum + bytes.length, 0);
    expect(latin1(pdf).match(/\/Subtype \/Image/g)).toHaveLength(names.length);
    expect(pdf.length).toBeLessThan(stored + 2e6);
    expect(pdf.length).toBeLessThan(10e6);
  }, 60_000);

  test('letters of central Europe come from the wider font, strange ones become a question mark', async () => {
    const page = {
      name: 'Test',
      marks: [{ kind: 'words', x: 0, y: 10, text: 'Přání 紙', size: 4 }] as const,
    };
    const pdf = await guidePdf([page], new Map(), 'a4');
    expect(latin1(pdf).match(/\/FontFile3? |\/FontFile2 /g)!.length).toBe(2);
  });
});

test('the widths that lines are broken by are those of the font', () => {
  const document = new PDFDocument({ autoFirstPage: false });
  const fonts = readFonts();
  for (const [bytes, bold] of [
    [fonts.plain, false],
    [fonts.bold, true],
  ] as const) {
    document.font(Buffer.from(bytes)).fontSize(1000);
    for (let code = 32; code < 127; code++) {
      const letter = String.fromCharCode(code);
      expect(
        Math.abs(plainWidth(letter, 1000, bold) - document.widthOfString(letter)),
      ).toBeLessThan(1);
    }
  }
});
