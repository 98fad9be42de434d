import PDFDocument from 'pdfkit';
import { PAGE } from '../guide/page.ts';
import type { GuidePage } from '../guide/page.ts';
import { drawMarks } from './draw-marks.ts';
import { readFonts } from './fonts.ts';

export type PrintPaper = 'letter' | 'a4';

/** Paper sizes in mm: ANSI/ASME Y14.1 (A, 8 1/2 x 11 in) and ISO 216. */
const PAPERS: Readonly<Record<PrintPaper, { readonly width: number; readonly height: number }>> = {
  letter: { width: 215.9, height: 279.4 },
  a4: { width: 210, height: 297 },
};

/** Points of a PDF in a mm: 72 to the inch. */
export const POINTS = 72 / 25.4;

/**
 * The guide as a PDF that prints true to scale.
 *
 * Takes       the pages, the pictures by the addresses that the pages name (JPEG or PNG; one that is
 *             missing is drawn as an empty frame), and the paper. `made` stands in the file as its date
 *             of creation; without it the same guide gives the same bytes. `title` is what a reader shows over it.
 * Gives       a PDF whose printed part is 7 1/2 x 10 in in the middle of the page, with no scaling asked
 *             of the printer, every font embedded and every picture stored once.
 */
export async function guidePdf(
  pages: readonly GuidePage[],
  pictures: ReadonlyMap<string, Uint8Array>,
  paper: PrintPaper,
  made: Date = new Date(0),
  title: string = pages[0]?.name ?? 'Guide',
): Promise<Uint8Array> {
  const { width, height } = PAPERS[paper];
  const size: [number, number] = [width * POINTS, height * POINTS];
  const document = new PDFDocument({
    size,
    margin: 0,
    autoFirstPage: false,
    pdfVersion: '1.7',
    info: { Title: title, Creator: 'Plyhue', CreationDate: made },
    lang: 'en',
    displayTitle: true,
  });
  printAtFullSize(document);
  const fonts = readFonts();
  for (const [name, bytes] of Object.entries<Uint8Array>({ ...fonts }))
    document.registerFont(name, bytes);
  const read = collect(document);
  const opened = new Map<string, PDFKit.Mixins.ImageSrc>();
  for (const page of pages) {
    document.addPage({ size, margin: 0 });
    document.outline.addItem(page.name);
    document.save();
    document.scale(POINTS);
    document.translate((width - PAGE.width) / 2, (height - PAGE.height) / 2);
    drawMarks(document, page.marks, (href) => openOnce(document, opened, pictures, href));
    document.restore();
  }
  document.end();
  return read;
}

/** Asks the reader to print without fitting to the page. */
function printAtFullSize(document: PDFKit.PDFDocument): void {
  const root = (document as unknown as { _root: { data: Record<string, unknown> } })._root;
  const preferences = document.ref({ PrintScaling: 'None', DisplayDocTitle: true });
  root.data.ViewerPreferences = preferences;
  preferences.end(undefined);
}

function openOnce(
  document: PDFKit.PDFDocument,
  opened: Map<string, PDFKit.Mixins.ImageSrc>,
  pictures: ReadonlyMap<string, Uint8Array>,
  href: string,
): PDFKit.Mixins.ImageSrc | null {
  const known = opened.get(href);
  if (known !== undefined) return known;
  const bytes = pictures.get(href);
  if (bytes === undefined) return null;
  const image = (
    document as unknown as { openImage(src: Buffer): PDFKit.Mixins.ImageSrc }
  ).openImage(Buffer.from(bytes));
  opened.set(href, image);
  return image;
}

function collect(document: PDFKit.PDFDocument): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    document.on('data', (part: Buffer) => parts.push(part));
    document.on('end', () => resolve(new Uint8Array(Buffer.concat(parts))));
    document.on('error', reject);
  });
}
