import sharp from 'sharp';
import type { Sharp } from 'sharp';
import { encodedByte } from '../server/colour/curves.ts';
import type { Quad } from '../server/geometry/points.ts';
import { lightAt } from '../server/photo/light.ts';
import type { RgbImage } from '../server/photo/picture.ts';
import type { StageColour, Stages } from './read-stages.ts';

/** A picture of a stage by the name of its file. */
export type StagePictures = Readonly<Record<string, Uint8Array>>;

/** Draws each stage of reading a photo, small enough for a page. */
export async function drawStages(stages: Stages): Promise<StagePictures> {
  return {
    'corners.jpg': await corners(stages),
    'light.jpg': await light(stages),
    'evened.jpg': await sideBySide([stages.before, stages.after]),
    'labels.png': await labels(stages),
    'palette.svg': Buffer.from(paletteSvg(stages.colours)),
  };
}

const WIDTH = 900;
const GAP = 12;

/** The sheets that were found, outlined and numbered in reading order; the white card with broken lines. */
async function corners({ preview, sheets, white }: Stages): Promise<Buffer> {
  const { width, height } = preview;
  const marks = sheets
    .map((quad, index) => {
      const [x, y] = middleOf(quad);
      return `<polygon points="${pointsOf(quad)}" stroke="#000" stroke-width="5"/>
<polygon points="${pointsOf(quad)}" stroke="#fff" stroke-width="2"/>
<circle cx="${x}" cy="${y}" r="21" fill="#fff" stroke="#000" stroke-width="2"/>
<text x="${x}" y="${y}" dy="0.36em" text-anchor="middle" font-family="sans-serif" font-size="26" fill="#000">${index + 1}</text>`;
    })
    .join('\n');
  const card =
    white === null
      ? ''
      : `<polygon points="${pointsOf(white)}" stroke="#000" stroke-width="3" stroke-dasharray="7 5"/>`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" fill="none">${marks}${card}</svg>`;
  const drawn = await raw(preview)
    .composite([{ input: Buffer.from(svg) }])
    .png()
    .toBuffer();
  return sharp(drawn).resize({ width: WIDTH }).jpeg({ quality: 80 }).toBuffer();
}

/**
 * Left, what the light is read from: the bare table; the rest of the photo is dimmed. Right, the light itself,
 * its brightest place white and a line at every five per cent.
 */
async function light({ preview, table, field }: Stages): Promise<Buffer> {
  const { width, height } = preview;
  const from = preview.rgb.map((byte, at) =>
    table[Math.floor(at / 3)] === 1 ? byte : 235 + byte / 13,
  );
  const places = Array.from({ length: width * height }, (_, at) =>
    lightAt(field, at % width, Math.floor(at / width)),
  );
  const brightest = [0, 1, 2].map((k) => places.reduce((most, at) => Math.max(most, at[k]!), 0));
  const step = (at: number): number => Math.floor((20 * places[at]![1]) / brightest[1]!);
  const shown = new Uint8Array(3 * width * height);
  for (let at = 0; at < places.length; at++) {
    const beside = at % width === width - 1 ? at : at + 1;
    const below = at + width < places.length ? at + width : at;
    const isLine = step(at) !== step(beside) || step(at) !== step(below);
    for (let k = 0; k < 3; k++)
      shown[3 * at + k] = isLine ? 30 : encodedByte(places[at]![k]! / brightest[k]!);
  }
  return sideBySide([
    { width, height, rgb: from },
    { width, height, rgb: shown },
  ]);
}

/** Left, the pixels on soft borders in black; right, each pixel in the colour of the palette it counts for. */
async function labels({ reading, flat, labels: { of }, colours }: Stages): Promise<Buffer> {
  const { width, height } = reading;
  const inks = colours.map(({ hex }) => bytesOf(hex));
  const whole = Uint8Array.from({ length: 3 * of.length }, (_, at) => {
    return inks[of[Math.floor(at / 3)]!]![at % 3]!;
  });
  const inside = whole.map((byte, at) => (flat[Math.floor(at / 3)] === 1 ? byte : 0));
  const half = (WIDTH - GAP) / 2;
  const panels = await Promise.all(
    [inside, whole].map((rgb) =>
      raw({ width, height, rgb }).resize({ width: half, kernel: 'nearest' }).png().toBuffer(),
    ),
  );
  const tall = Math.round((half * height) / width);
  return beside(panels, tall).png({ palette: true, colours: 32, dither: 0, effort: 10 }).toBuffer();
}

async function sideBySide(pictures: readonly RgbImage[]): Promise<Buffer> {
  const half = (WIDTH - GAP) / 2;
  const panels = await Promise.all(
    pictures.map((picture) => raw(picture).resize({ width: half }).png().toBuffer()),
  );
  const [first] = pictures;
  return beside(panels, Math.round((half * first!.height) / first!.width))
    .jpeg({ quality: 80 })
    .toBuffer();
}

function beside(panels: readonly Buffer[], height: number): Sharp {
  return sharp({
    create: { width: WIDTH, height, channels: 3, background: '#ffffff' },
  }).composite(
    panels.map((input, index) => ({ input, top: 0, left: index * ((WIDTH + GAP) / 2) })),
  );
}

function raw({ width, height, rgb }: RgbImage): Sharp {
  return sharp(rgb, { raw: { width, height, channels: 3 } });
}

const ROW = 64;

/** Each colour as it was read, as it was printed, and how far off it is said to be and was. */
function paletteSvg(colours: readonly StageColour[]): string {
  const rows = colours.map(({ lab, hex, name, role, share, stated, made, trueHex }, index) => {
    const y = 40 + index * ROW;
    const [l, a, b] = [lab.l, lab.a, lab.b].map((value) => value.toFixed(1));
    return `<rect x="16" y="${y}" width="110" height="52" fill="${hex}"/><rect x="126" y="${y}" width="110" height="52" fill="${trueHex}"/>
<text x="256" y="${y + 22}" font-weight="bold">${name}, ${role}, ${(100 * share).toFixed(1)} %</text>
<text x="256" y="${y + 44}">L ${l}  a ${a}  b ${b}; stated error ${stated.toFixed(1)}, made ${made.toFixed(1)}</text>`;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 720 ${40 + ROW * colours.length}" font-family="sans-serif" font-size="17" fill="#222">
<rect width="100%" height="100%" fill="#ffffff"/>
<text x="16" y="27">as read</text><text x="126" y="27">as printed</text>
${rows.join('\n')}
</svg>
`;
}

function pointsOf(quad: Quad<'photo'>): string {
  return quad.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');
}

function middleOf(quad: Quad<'photo'>): readonly [string, string] {
  const mean = (of: 'x' | 'y'): string =>
    (quad.reduce((sum, corner) => sum + corner[of], 0) / 4).toFixed(1);
  return [mean('x'), mean('y')];
}

function bytesOf(hex: string): number[] {
  return [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
}
