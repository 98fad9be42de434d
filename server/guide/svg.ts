import type {
  Area,
  Extent,
  Group,
  Line,
  Mark,
  Outline,
  Picture,
  Spot,
  Stroke,
  Words,
} from './drawing.ts';
import { INK } from './look.ts';
import { runsOf } from './letters.ts';

/**
 * A drawing as an SVG picture of its own.
 *
 * Takes       marks in mm, the size of the picture and where its upper left corner lies; `name` keeps the
 *             ids inside apart from those of other drawings on one page (letters, digits, - and _).
 * Gives       text without line breaks; every picture is named once, however often it is shown.
 */
export function svgOf(
  marks: readonly Mark[],
  size: Extent,
  corner: { readonly x: number; readonly y: number } = { x: 0, y: 0 },
  name = 'drawing',
): string {
  const sheet = new Defs(name.replaceAll(/[^A-Za-z0-9_-]/g, '-'));
  const body = marks.map((mark) => element(mark, sheet)).join('');
  const box = [corner.x, corner.y, size.width, size.height].map(n).join(' ');
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"` +
    ` viewBox="${box}" width="${n(size.width)}mm" height="${n(size.height)}mm">` +
    `${sheet.text()}${body}</svg>`
  );
}

/** Outlines to clip by, and pictures that are shown more than once. */
class Defs {
  readonly #name: string;
  readonly #parts: string[] = [];
  readonly #pictures = new Map<string, string>();
  #count = 0;

  constructor(name: string) {
    this.#name = name;
  }

  clip(outline: Outline): string {
    const id = `${this.#name}-${++this.#count}`;
    this.#parts.push(`<clipPath id="${id}"><path d="${path(outline)}"/></clipPath>`);
    return id;
  }

  picture({ href, width, height }: Picture): string {
    const key = `${width} ${height} ${href}`;
    const known = this.#pictures.get(key);
    if (known !== undefined) return known;
    const id = `${this.#name}-${++this.#count}`;
    this.#pictures.set(key, id);
    this.#parts.push(
      `<image id="${id}" width="${n(width)}" height="${n(height)}" preserveAspectRatio="none" xlink:href="${escape(href)}"/>`,
    );
    return id;
  }

  text(): string {
    return this.#parts.length === 0 ? '' : `<defs>${this.#parts.join('')}</defs>`;
  }
}

function element(mark: Mark, sheet: Defs): string {
  switch (mark.kind) {
    case 'words':
      return words(mark);
    case 'line':
      return line(mark);
    case 'stroke':
      return stroke(mark);
    case 'area':
      return area(mark);
    case 'picture':
      return `<use xlink:href="#${sheet.picture(mark)}" x="${n(mark.x)}" y="${n(mark.y)}"/>`;
    case 'group':
      return group(mark, sheet);
  }
}

function words(mark: Words): string {
  return runsOf(mark)
    .map(
      (run) =>
        `<text x="${n(run.x)}" y="${n(run.y)}" font-family="Atkinson Hyperlegible, sans-serif" font-size="${n(run.size)}"` +
        `${mark.bold === true ? ' font-weight="bold"' : ''} fill="${escape(mark.colour ?? INK)}">${escape(run.text)}</text>`,
    )
    .join('');
}

function line({ from, to, width, colour, dashes }: Line): string {
  const dash = dashes === undefined ? '' : ` stroke-dasharray="${dashes.map(n).join(' ')}"`;
  return (
    `<line x1="${n(from.x)}" y1="${n(from.y)}" x2="${n(to.x)}" y2="${n(to.y)}"` +
    ` stroke="${escape(colour ?? INK)}" stroke-width="${n(width)}"${dash}/>`
  );
}

function stroke({ spots, width, colour, opacity }: Stroke): string {
  const faint = opacity === undefined ? '' : ` opacity="${n(opacity)}"`;
  return (
    `<path d="${way(spots)}" fill="none" stroke="${escape(colour)}" stroke-width="${n(width)}"` +
    ` stroke-linejoin="round" stroke-linecap="round"${faint}/>`
  );
}

function area({ corners, fill, opacity, edge }: Area): string {
  const rim =
    edge === undefined
      ? ''
      : ` stroke="${escape(edge.colour)}" stroke-width="${n(edge.width)}" stroke-linejoin="round"`;
  const faint = opacity === undefined ? '' : ` opacity="${n(opacity)}"`;
  return `<path d="${path(corners)}" fill="${escape(fill ?? 'none')}"${rim}${faint}/>`;
}

function group({ x, y, turned, scale, clip, marks }: Group, sheet: Defs): string {
  const moves = [
    x !== 0 || y !== 0 ? `translate(${n(x)} ${n(y)})` : '',
    turned === undefined || turned === 0 ? '' : `rotate(${n(turned)})`,
    scale === undefined || scale === 1 ? '' : `scale(${n(scale)})`,
  ].filter((move) => move !== '');
  const transform = moves.length === 0 ? '' : ` transform="${moves.join(' ')}"`;
  const clipped = clip === undefined ? '' : ` clip-path="url(#${sheet.clip(clip)})"`;
  return `<g${transform}${clipped}>${marks.map((mark) => element(mark, sheet)).join('')}</g>`;
}

function path(outline: Outline): string {
  return `${way(outline)}Z`;
}

function way(spots: readonly Spot[]): string {
  return `M${spots.map(({ x, y }) => `${n(x)} ${n(y)}`).join('L')}`;
}

/** To a thousandth of a mm. */
function n(value: number): string {
  return String(Math.round(value * 1000) / 1000 + 0);
}

/** Text made safe inside attributes and elements; characters that XML forbids are dropped. */
export function escape(text: string): string {
  return text
    .replaceAll(/[^\t\n\r -\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
