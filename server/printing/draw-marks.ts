import type { Area, Group, Line, Mark, Outline, Picture, Stroke, Words } from '../guide/drawing.ts';
import { runsOf } from '../guide/letters.ts';
import { INK } from '../guide/look.ts';

export type PictureOf = (href: string) => PDFKit.Mixins.ImageSrc | null;

/** Draws marks in the document's present measure. */
export function drawMarks(
  document: PDFKit.PDFDocument,
  marks: readonly Mark[],
  pictureOf: PictureOf,
): void {
  for (const mark of marks) drawMark(document, mark, pictureOf);
}

function drawMark(document: PDFKit.PDFDocument, mark: Mark, pictureOf: PictureOf): void {
  switch (mark.kind) {
    case 'words':
      drawWords(document, mark);
      break;
    case 'line':
      drawLine(document, mark);
      break;
    case 'stroke':
      drawStroke(document, mark);
      break;
    case 'area':
      drawArea(document, mark);
      break;
    case 'picture':
      drawPicture(document, mark, pictureOf);
      break;
    case 'group':
      drawGroup(document, mark, pictureOf);
      break;
  }
}

function drawWords(document: PDFKit.PDFDocument, words: Words): void {
  document.fillColor(words.colour ?? INK).fillOpacity(1);
  const face = words.bold === true ? 'bold' : 'plain';
  for (const run of runsOf(words)) {
    let { x } = run;
    for (const part of byFont(document, run.text, face)) {
      document.font(part.font).fontSize(run.size);
      document.text(part.text, x, run.y, { lineBreak: false, baseline: 'alphabetic' });
      x += document.widthOfString(part.text);
    }
  }
}

interface Part {
  readonly font: string;
  readonly text: string;
}

/** Parts a text by the font that has its letters; a letter that no font has becomes a question mark. */
function byFont(document: PDFKit.PDFDocument, text: string, face: 'plain' | 'bold'): Part[] {
  const parts: { font: string; text: string }[] = [];
  for (const letter of text) {
    const font = [face, `${face}More`].find((name) => has(document, name, letter));
    const last = parts.at(-1);
    const shown = font === undefined ? '?' : letter;
    if (last?.font === (font ?? face)) last.text += shown;
    else parts.push({ font: font ?? face, text: shown });
  }
  return parts;
}

/** Whether a font has a letter; asked of the font that the library has opened. */
function has(document: PDFKit.PDFDocument, font: string, letter: string): boolean {
  const { _font: opened } = document.font(font) as unknown as {
    _font: { font: { hasGlyphForCodePoint(point: number): boolean } };
  };
  return opened.font.hasGlyphForCodePoint(letter.codePointAt(0)!);
}

function drawLine(document: PDFKit.PDFDocument, { from, to, width, colour, dashes }: Line): void {
  const { hex, opacity } = inkOf(colour ?? INK);
  document.save();
  document.lineWidth(width).strokeColor(hex).strokeOpacity(opacity);
  if (dashes !== undefined) document.dash(dashes[0]!, { space: dashes[1] ?? dashes[0]! });
  document.moveTo(from.x, from.y).lineTo(to.x, to.y).stroke();
  document.restore();
}

function drawStroke(document: PDFKit.PDFDocument, stroke: Stroke): void {
  const { spots, width, colour, opacity = 1 } = stroke;
  document.save();
  document.lineWidth(width).lineJoin('round').lineCap('round');
  document.strokeColor(inkOf(colour).hex).strokeOpacity(opacity);
  spots.forEach(({ x, y }, index) => (index === 0 ? document.moveTo(x, y) : document.lineTo(x, y)));
  document.stroke();
  document.restore();
}

function drawArea(document: PDFKit.PDFDocument, { corners, fill, opacity = 1, edge }: Area): void {
  document.save();
  trace(document, corners);
  if (fill !== undefined) document.fillColor(inkOf(fill).hex).fillOpacity(opacity);
  if (edge !== undefined)
    document
      .lineJoin('round')
      .lineWidth(edge.width)
      .strokeColor(inkOf(edge.colour).hex)
      .strokeOpacity(opacity);
  if (fill !== undefined && edge !== undefined) document.fillAndStroke();
  else if (fill !== undefined) document.fill();
  else document.stroke();
  document.restore();
}

function drawPicture(document: PDFKit.PDFDocument, picture: Picture, pictureOf: PictureOf): void {
  const { x, y, width, height } = picture;
  const image = pictureOf(picture.href);
  if (image !== null) {
    document.image(image, x, y, { width, height });
    return;
  }
  document.save();
  document.rect(x, y, width, height).lineWidth(0.3).strokeColor(INK).stroke();
  document.restore();
}

function drawGroup(document: PDFKit.PDFDocument, group: Group, pictureOf: PictureOf): void {
  document.save();
  document.translate(group.x, group.y);
  if (group.turned !== undefined && group.turned !== 0) document.rotate(group.turned);
  if (group.scale !== undefined && group.scale !== 1) document.scale(group.scale);
  if (group.clip !== undefined) {
    trace(document, group.clip);
    document.clip();
  }
  drawMarks(document, group.marks, pictureOf);
  document.restore();
}

function trace(document: PDFKit.PDFDocument, outline: Outline): void {
  outline.forEach(({ x, y }, index) =>
    index === 0 ? document.moveTo(x, y) : document.lineTo(x, y),
  );
  document.closePath();
}

/** A colour `#rrggbb`, or `#rrggbbaa` with its opacity. */
function inkOf(colour: string): { hex: string; opacity: number } {
  return colour.length === 9
    ? { hex: colour.slice(0, 7), opacity: parseInt(colour.slice(7), 16) / 255 }
    : { hex: colour, opacity: 1 };
}
