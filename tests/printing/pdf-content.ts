import { inflateSync } from 'node:zlib';

/** The drawing commands of each page of a PDF, unpacked. Good for PDFs with deflated streams. */
export function contentsOf(pdf: Uint8Array): string[] {
  const whole = Buffer.from(pdf);
  const text = whole.toString('latin1');
  const contents: string[] = [];
  for (const found of text.matchAll(/ obj\s*<<((?:(?!endobj)[^])*?)>>\s*stream\r?\n/g)) {
    const head = found[1]!;
    const start = found.index + found[0].length;
    const length = Number(/\/Length (\d+)/.exec(head)?.[1]);
    if (!head.includes('/FlateDecode') || /\/Subtype|\/Length1|\/Type/.test(head)) continue;
    const plain = inflateSync(whole.subarray(start, start + length)).toString('latin1');
    if (plain.includes(' cm\n')) contents.push(plain);
  }
  return contents;
}

export type Matrix = readonly [number, number, number, number, number, number];

export interface DrawnLine {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

/** Lines of two points as they fall on the paper, in points (1/72 in): follows q, Q, cm, m and l. */
export function linesIn(content: string): DrawnLine[] {
  const lines: DrawnLine[] = [];
  const kept: Matrix[] = [];
  let now: Matrix = [1, 0, 0, 1, 0, 0];
  let from: readonly [number, number] | null = null;
  const at = (x: number, y: number): [number, number] => [
    now[0] * x + now[2] * y + now[4],
    now[1] * x + now[3] * y + now[5],
  ];
  for (const line of content.split('\n')) {
    const parts = line.trim().split(/\s+/);
    const command = parts.at(-1);
    const numbers = parts.slice(0, -1).map(Number);
    if (command === 'q') kept.push(now);
    if (command === 'Q') now = kept.pop()!;
    if (command === 'cm') now = times(numbers as unknown as Matrix, now);
    if (command === 'm') from = at(numbers[0]!, numbers[1]!);
    if (command === 'l' && from !== null) lines.push({ from, to: at(numbers[0]!, numbers[1]!) });
  }
  return lines;
}

function times(a: Matrix, b: Matrix): Matrix {
  return [
    a[0] * b[0] + a[1] * b[2],
    a[0] * b[1] + a[1] * b[3],
    a[2] * b[0] + a[3] * b[2],
    a[2] * b[1] + a[3] * b[3],
    a[4] * b[0] + a[5] * b[2] + b[4],
    a[4] * b[1] + a[5] * b[3] + b[5],
  ];
}
