import sharp from 'sharp';
import type { Pad } from '../../server/contract/pads.ts';
import type { Figure } from './figure.ts';
import { percentile, sendPhoto, startPad, startService } from './trust-service.ts';
import type { Sent } from './trust-service.ts';

const READS = 200;
/** Patience of a person who is told that the desk is full. */
const PAUSE = 2000;

/** Many people at once, each with a 12-megapixel photo; one more only looks at a pad. */
export async function loadFigures(
  folder: string,
  photo: Uint8Array,
  people: number,
): Promise<Figure[]> {
  const service = await startService(folder);
  try {
    const { address } = service;
    const pad = await startPad(address);
    const large = await sharp(photo).rotate().resize(4000, 3000, { fit: 'fill' }).toBuffer();
    await sendPhoto(address, pad, photo, 'first');
    const idle = await readTimes(address, pad, READS);
    const sending = { busy: true };
    const all = Promise.all(
      Array.from({ length: people }, (_, at) => sendUntilTaken(address, pad, large, at)),
    ).finally(() => {
      sending.busy = false;
    });
    const loaded: number[] = [];
    while (sending.busy) loaded.push(...(await readTimes(address, pad, 5)));
    const sent = await all;
    const whole = (await (await fetch(`${address}/api/pads/${pad}`)).json()) as Pad;
    return figuresOf(
      { people, idle, loaded, sent, photos: whole.photos.length - 1 },
      service.peakMegabytes(),
      service.alive(),
    );
  } finally {
    await service.stop();
  }
}

interface Measured {
  readonly people: number;
  readonly idle: readonly number[];
  readonly loaded: readonly number[];
  readonly sent: readonly Sent[];
  /** Photos that the pad shows in the end. */
  readonly photos: number;
}

function figuresOf(measured: Measured, peak: number, alive: boolean): Figure[] {
  const { people, idle, loaded, sent, photos } = measured;
  const [calm, under] = [percentile(idle, 0.95), percentile(loaded, 0.95)];
  const read = sent.filter(({ status, sides }) => status === 201 && sides > 0).length;
  const slowest = Math.max(...sent.map(({ milliseconds }) => milliseconds)) / 1000;
  return [
    {
      name: 'slowdown of plain reads under load (95th percentile)',
      value: under / calm,
      unit: 'times',
      bar: { at: 'most', value: 10 },
      note: `${calm.toFixed(1)} ms idle, ${under.toFixed(1)} ms beside ${people} senders, ${loaded.length} reads`,
    },
    {
      name: 'accepted photos that are not read in the end',
      value: read - photos + (people - read),
      unit: '',
      bar: { at: 'most', value: 0 },
      note: `${people} people at once with 12 megapixels; the last had its answer after ${slowest.toFixed(0)} s`,
    },
    { name: 'crashes under load', value: alive ? 0 : 1, unit: '', bar: { at: 'most', value: 0 } },
    {
      name: 'most memory held under load',
      value: peak,
      unit: 'MB',
      bar: null,
      note: 'service and its processes, from sources',
    },
  ];
}

/** Sends a photo of one's own; waits and tries again while the desk is full. */
async function sendUntilTaken(
  address: string,
  pad: string,
  photo: Uint8Array,
  number: number,
): Promise<Sent> {
  const own = await tinted(photo, number);
  for (;;) {
    const sent = await sendPhoto(address, pad, own, `person ${number}`);
    if (sent.status !== 503) return sent;
    await new Promise((resolve) => setTimeout(resolve, PAUSE));
  }
}

/** A picture of its own: a little brighter or darker than the others. */
function tinted(photo: Uint8Array, number: number): Promise<Buffer> {
  return sharp(photo)
    .linear(1 - number / 1000, 0)
    .jpeg({ quality: 88 })
    .toBuffer();
}

async function readTimes(address: string, pad: string, count: number): Promise<number[]> {
  const times: number[] = [];
  for (let at = 0; at < count; at++) {
    const start = performance.now();
    await (await fetch(`${address}/api/pads/${pad}`)).arrayBuffer();
    times.push(performance.now() - start);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
  return times;
}
