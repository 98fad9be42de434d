import sharp from 'sharp';
import type { Pad } from '../../server/contract/pads.ts';
import { deskLimits } from '../../server/photo-desk.ts';
import { marked } from '../http/kill-rounds.ts';
import type { Figure } from './figure.ts';
import { percentile, sendPhoto, startPad, startService } from './running-service.ts';
import type { Sent } from './running-service.ts';

const READS = 200;
/** Patience of a person who is told that the desk is full. */
const PAUSE = 2000;
/**
 * Two processes for photos at 1.5 GB each and the service at 1 GB, its heap and photos on their way to the disk:
 * what a computer with 8 GB gives beside its other programs. A number of its own, so that a service that allows
 * itself more does not move the bar.
 */
const MOST_MEGABYTES = 4096;

/** Many people at once, each with a 12-megapixel photo for a pad of her own; one more only looks at a pad. */
export async function loadFigures(
  folder: string,
  photo: Uint8Array,
  people: number,
): Promise<Figure[]> {
  const service = await startService(folder);
  try {
    const { address } = service;
    const shown = await startPad(address);
    const pads = await Promise.all(Array.from({ length: people }, () => startPad(address)));
    const large = await sharp(photo).rotate().resize(4000, 3000, { fit: 'fill' }).toBuffer();
    await sendPhoto(address, shown, photo, 'first');
    const idle = await readTimes(address, shown, READS);
    const sending = { busy: true };
    const all = Promise.all(
      pads.map((pad, at) => sendUntilTaken(address, pad, marked(large, at), `person ${at}`)),
    ).finally(() => {
      sending.busy = false;
    });
    const loaded: number[] = [];
    while (sending.busy) loaded.push(...(await readTimes(address, shown, 5)));
    const sent = await all;
    const overfull = await sendTooMany(address, photo);
    let shownPhotos = 0;
    for (const pad of pads) {
      const whole = (await (await fetch(`${address}/api/pads/${pad}`)).json()) as Pad;
      shownPhotos += whole.photos.length;
    }
    return figuresOf(
      { people, idle, loaded, sent, overfull, photos: shownPhotos },
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
  readonly overfull: readonly Sent[];
  /** Photos that their pads show in the end. */
  readonly photos: number;
}

function figuresOf(measured: Measured, peak: number, alive: boolean): Figure[] {
  const { people, idle, loaded, sent, overfull, photos } = measured;
  const [calm, under] = [percentile(idle, 0.95), percentile(loaded, 0.95)];
  const read = sent.filter(({ status, sides }) => status === 201 && sides > 0).length;
  const taken = sent.filter(({ status }) => status === 201).length;
  const kinds = [...new Set(sent.map(({ kind }) => kind))];
  const told = kinds.map((kind) => `${sent.filter((one) => one.kind === kind).length} ${kind}`);
  const turnedAway = overfull.filter(({ status }) => status === 503);
  const { photoProcesses, photoMegabytes } = deskLimits();
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
      value: Math.max(taken - read, taken - photos),
      unit: '',
      bar: { at: 'most', value: 0 },
      note: `${people} people at once with 12 megapixels: ${told.join(', ')}; the last had its answer after ${slowest.toFixed(0)} s`,
    },
    {
      name: 'photos of the crowd that were not accepted',
      value: people - taken,
      unit: '',
      bar: { at: 'most', value: 0 },
    },
    {
      name: 'turned away from a full queue without being told when to come back',
      value: turnedAway.filter(({ retryAfter }) => retryAfter === null).length,
      unit: '',
      bar: { at: 'most', value: 0 },
      note: `${turnedAway.length} of ${overfull.length} small pictures at once were turned away (503, Retry-After), the others answered`,
    },
    {
      name: 'faults and broken connections under load',
      value: [...sent, ...overfull].filter(({ status }) => status === 0 || status === 500).length,
      unit: '',
      bar: { at: 'most', value: 0 },
    },
    { name: 'crashes under load', value: alive ? 0 : 1, unit: '', bar: { at: 'most', value: 0 } },
    {
      name: 'most memory held under load',
      value: peak,
      unit: 'MB',
      bar: { at: 'most', value: MOST_MEGABYTES },
      note: `the service and its ${photoProcesses} processes for photos, each held to ${photoMegabytes} MB`,
    },
  ];
}

/** Sends a photo; waits and tries again while the desk is full. */
async function sendUntilTaken(
  address: string,
  pad: string,
  photo: Uint8Array,
  arrangement: string,
): Promise<Sent> {
  for (;;) {
    const sent = await sendPhoto(address, pad, photo, arrangement);
    if (sent.status !== 503) return sent;
    await new Promise((resolve) => setTimeout(resolve, PAUSE));
  }
}

/** Twice as many pictures at once as may wait; they are small patches of paper without sheets. */
async function sendTooMany(address: string, photo: Uint8Array): Promise<Sent[]> {
  const { photoProcesses, photosWaiting } = deskLimits();
  const pad = await startPad(address);
  const patch = await sharp(photo)
    .extract({ left: 900, top: 900, width: 120, height: 90 })
    .jpeg()
    .toBuffer();
  return Promise.all(
    Array.from({ length: 2 * (photoProcesses + photosWaiting) }, (_, at) =>
      sendPhoto(address, pad, marked(patch, at), `too many ${at}`),
    ),
  );
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
