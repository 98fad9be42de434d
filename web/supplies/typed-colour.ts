import type { ColourNames, NewSupply } from '../../server/contract/supplies.ts';
import type { LabTriple } from '../../server/contract/values.ts';
import { onScreen } from './on-screen.ts';
import { saidIn } from './said-in.ts';

/** A colour as she types it: what is sent, what the screen shows, and whether it is told only roughly. */
export interface TypedColour {
  readonly colour: NewSupply['colour'];
  readonly shown: string;
  readonly roughly: boolean;
}

/**
 * Reads a colour as she types it: `#0f5257`, `rgb(15 82 87)`, `lab 32 -18 -9`, `forest green`.
 *
 * Takes  a colour in figures, as CSS writes them or `lab` (or nothing) and three numbers; or one of the
 *        names that the service knows, in any spelling of it.
 * Gives  null when it is neither.
 */
export function typedColour(text: string, names: ColourNames['names']): TypedColour | null {
  const lab = typedLab(text) ?? cssFigures(text);
  if (lab !== null) return { colour: { lab }, shown: onScreen(lab), roughly: false };
  const named = saidIn(names, text);
  if (named === undefined) return null;
  return { colour: { words: named.name }, shown: named.hex, roughly: true };
}

function typedLab(text: string): LabTriple | null {
  const plain = text.trim().replace(/^lab\s*\(?|\)$/gi, '');
  const numbers = plain
    .split(/[\s,;]+/)
    .filter(Boolean)
    .map(Number);
  const [l, a, b] = numbers;
  if (numbers.length !== 3 || l === undefined || a === undefined || b === undefined) return null;
  if (![l, a, b].every(Number.isFinite) || l < 0 || l > 100) return null;
  return Math.max(Math.abs(a), Math.abs(b)) > 150 ? null : [l, a, b];
}

/** Not CSS's words: the name of a colour is no measure of a paper. */
function cssFigures(text: string): LabTriple | null {
  if (!/[#(]/.test(text) || !CSS.supports('color', text)) return null;
  const context = document.createElement('canvas').getContext('2d');
  if (!context) return null;
  context.fillStyle = text;
  context.fillRect(0, 0, 1, 1);
  const [red, green, blue] = context.getImageData(0, 0, 1, 1).data;
  return labFromBytes(red!, green!, blue!);
}

/**
 * Lab (D65) of a pixel.
 *
 * Source sRGB: IEC 61966-2-1; Lab: CIE 15 with the D65 white of IEC 61966-2-1.
 */
export function labFromBytes(red: number, green: number, blue: number): LabTriple {
  const [r, g, b] = [red, green, blue].map(linear) as [number, number, number];
  const x = curve((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
  const y = curve(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const z = curve((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

function linear(byte: number): number {
  const value = byte / 255;
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}

function curve(t: number): number {
  return t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29;
}
