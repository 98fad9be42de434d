import sharp from 'sharp';
import type { Figure } from './figure.ts';
import { percentile, sendPhoto, startPad, startService } from './trust-service.ts';
import type { Sent } from './trust-service.ts';

/** The longest that one picture may take, in milliseconds. */
const LIMIT = 10_000;
const AT_ONCE = 4;

/** Damaged copies of real pictures: bits flipped, runs overwritten, cut off, glued; each must be answered in words. */
export async function mutationFigures(
  folder: string,
  photo: Uint8Array,
  count: number,
): Promise<Figure[]> {
  const service = await startService(folder);
  try {
    const pad = await startPad(service.address);
    const seeds = await seedPictures(photo);
    const sent: Sent[] = [];
    let next = 0;
    const sender = async (): Promise<void> => {
      while (next < count) {
        const at = (next += 1);
        const bytes = mutated(seeds[at % seeds.length]!, at);
        sent.push(await sendPhoto(service.address, pad, bytes, `mutation ${at}`));
      }
    };
    await Promise.all(Array.from({ length: AT_ONCE }, sender));
    const health = await fetch(`${service.address}/api/health`).then(
      ({ ok }) => ok,
      () => false,
    );
    return figuresOf(sent, service.alive() && health);
  } finally {
    await service.stop();
  }
}

function figuresOf(sent: readonly Sent[], serving: boolean): Figure[] {
  const answered = sent.filter(({ status, isProblem }) => status === 201 || isProblem);
  const faults = sent.filter(({ status }) => status === 0 || status >= 500).length;
  const slow = sent.filter(({ milliseconds }) => milliseconds > LIMIT).length;
  const p99 = percentile(
    sent.map(({ milliseconds }) => milliseconds),
    0.99,
  );
  const taken = sent.filter(({ status }) => status === 201).length;
  const note = `${sent.length} mutated JPEG, PNG, WebP and AVIF files; ${taken} still readable`;
  const none = { at: 'most', value: 0 } as const;
  return [
    {
      name: 'mutated pictures without a clear answer',
      value: sent.length - answered.length,
      unit: '',
      bar: none,
      note,
    },
    { name: 'crashes and faults by mutated pictures', value: faults, unit: '', bar: none },
    {
      name: `mutated pictures over ${LIMIT / 1000} s`,
      value: slow,
      unit: '',
      bar: none,
      note: `99th percentile ${Math.round(p99)} ms`,
    },
    {
      name: 'still serving after mutated pictures',
      value: serving ? 1 : 0,
      unit: '',
      bar: { at: 'least', value: 1 },
    },
  ];
}

/** Small pictures of each format that is read, so that thousands can be tried. */
async function seedPictures(photo: Uint8Array): Promise<Uint8Array[]> {
  const small = sharp(photo).rotate().resize(480);
  return Promise.all([
    small.clone().jpeg().toBuffer(),
    small.clone().jpeg({ progressive: true }).toBuffer(),
    small.clone().png().toBuffer(),
    small.clone().webp().toBuffer(),
    small.clone().avif().toBuffer(),
  ]);
}

function mutated(seed: Uint8Array, number: number): Uint8Array {
  const bytes = Uint8Array.from(seed);
  let state = number * 2654435761;
  const draw = (most: number): number => {
    state = (Math.imul(state, 1664525) + 1013904223) | 0;
    return (state >>> 8) % most;
  };
  const way = number % 4;
  if (way === 0) for (let at = 0; at < 12; at++) bytes[draw(bytes.length)]! ^= 1 << draw(8);
  if (way === 1) {
    const from = draw(bytes.length);
    bytes.fill(draw(256), from, from + 1 + draw(200));
  }
  if (way === 2) return bytes.slice(0, 1 + draw(bytes.length));
  // The header is where the lies are told.
  if (way === 3)
    for (let at = 0; at < 4; at++) bytes[draw(Math.min(400, bytes.length))] = draw(256);
  return bytes;
}
