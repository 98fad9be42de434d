/** Damaged copies of real pictures: bits flipped, runs overwritten, cut off, their headers lied in, parts doubled. */
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import type { Sharp } from 'sharp';

const WAYS = 5;
/** The header is where the lies are told. */
const HEADER = 400;

/** One of ten thousand and more damaged pictures; the same number gives the same bytes. */
export interface Mutations {
  readonly formats: readonly string[];
  at(number: number): Uint8Array;
}

/**
 * Pictures of each format that is read, small so that thousands can be tried: a patch of printed paper, on
 * which the search for sheets ends early, and one in `sheetsEvery` a table with sheets, which is read to the end.
 */
export async function openMutations(sheetsEvery: number): Promise<Mutations> {
  const photo = sharp(await readFile(here('../../sample-swatches/tidewrack-a-front.jpg')));
  const region = { left: 900, top: 900, width: 120, height: 90 };
  const [patches, sheets] = await Promise.all([
    inEachFormat(photo.clone().extract(region), 'patch'),
    inEachFormat(photo.clone().resize(160), 'sheets'),
  ]);
  return {
    formats: patches.map(({ format }) => format),
    at: (number) => {
      const seeds = number % sheetsEvery === 0 ? sheets : patches;
      const turn = Math.floor(number / (number % sheetsEvery === 0 ? sheetsEvery : 1));
      return mutated(seeds[turn % seeds.length]!.bytes, number);
    },
  };
}

interface Seed {
  readonly format: string;
  readonly bytes: Uint8Array;
}

async function inEachFormat(picture: Sharp, heic: string): Promise<Seed[]> {
  const written = [
    { format: 'JPEG', bytes: picture.clone().jpeg().toBuffer() },
    { format: 'progressive JPEG', bytes: picture.clone().jpeg({ progressive: true }).toBuffer() },
    { format: 'PNG', bytes: picture.clone().png().toBuffer() },
    { format: 'WebP', bytes: picture.clone().webp().toBuffer() },
    { format: 'AVIF', bytes: picture.clone().avif({ effort: 2 }).toBuffer() },
    { format: 'HEIC', bytes: readFile(here(`./heic/${heic}.heic`)) },
  ];
  return Promise.all(written.map(async ({ format, bytes }) => ({ format, bytes: await bytes })));
}

function here(path: string): string {
  return fileURLToPath(new URL(path, import.meta.url));
}

function mutated(seed: Uint8Array, number: number): Uint8Array {
  const bytes = Uint8Array.from(seed);
  const draw = drawing(number);
  const from = draw(bytes.length);
  // Which way is drawn, not counted: each format then meets each.
  switch (draw(WAYS)) {
    case 0:
      for (let at = 0; at < 12; at++) bytes[draw(bytes.length)]! ^= 1 << draw(8);
      return bytes;
    case 1:
      return bytes.fill(draw(256), from, from + 1 + draw(200));
    case 2:
      return bytes.slice(0, 1 + from);
    case 3:
      for (let at = 0; at < 4; at++) bytes[draw(Math.min(HEADER, bytes.length))] = draw(256);
      return bytes;
    default: {
      const part = bytes.subarray(from, from + draw(500));
      return Buffer.concat([bytes.subarray(0, from), part, bytes.subarray(from)]);
    }
  }
}

/** Whole numbers below a bound, by a linear congruential generator (Numerical Recipes, 2nd ed., 7.1, from memory). */
function drawing(seed: number): (most: number) => number {
  let state = Math.imul(seed, 2654435761);
  return (most) => {
    state = (Math.imul(state, 1664525) + 1013904223) | 0;
    return (state >>> 8) % most;
  };
}
