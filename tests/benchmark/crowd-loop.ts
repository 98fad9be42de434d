import sharp from 'sharp';
import { marked } from '../http/kill-rounds.ts';
import type { Figure } from './figure.ts';
import { sendPhoto, startPad, startService } from './running-service.ts';

/** Photos of 12 megapixels sent while the event loop is watched: so many at once, so many times. */
const AT_ONCE = 3;
const ROUNDS = 2;

/**
 * How long the event loop of the service stands still while photos are read, as the service itself measures it
 * (monitorEventLoopDelay, through `/api/metrics`), and whether a photo of 48 megapixels goes through.
 */
export async function loopFigures(folder: string, photo: Uint8Array): Promise<Figure[]> {
  const service = await startService(folder);
  try {
    const { address } = service;
    const pad = await startPad(address);
    const large = await sharp(photo).resize(4000, 3000, { fit: 'fill' }).jpeg().toBuffer();
    const huge = await sharp(photo)
      .resize(8000, 6000, { fit: 'fill' })
      .jpeg({ quality: 80 })
      .toBuffer();
    // The first ones load the code, which blocks once.
    await Promise.all([0, 1, 2].map((at) => sendPhoto(address, pad, large, `warm ${at}`)));
    await lagOf(address);
    let [sides, worst, typical] = [0, 0, 0];
    for (let round = 0; round < ROUNDS; round++) {
      const own = marked(large, round);
      const sent = await Promise.all(
        Array.from({ length: AT_ONCE }, (_, at) =>
          sendPhoto(address, pad, own, `table ${round}-${at}`),
        ),
      );
      sides += sent.reduce((sum, one) => sum + one.sides, 0);
      const { max, p99 } = await lagOf(address);
      worst = Math.max(worst, max);
      typical = Math.max(typical, p99);
    }
    const one = await sendPhoto(address, pad, huge, 'huge');
    const note = `${AT_ONCE * ROUNDS} photos of 12 megapixels, ${AT_ONCE} at once, ${sides} sides read; the 10 ms of the watching clock count in`;
    return [
      {
        name: 'event loop of the service while photos are read: 99th percentile',
        value: typical,
        unit: 'ms',
        bar: { at: 'most', value: 50 },
        note,
      },
      {
        name: 'event loop of the service while photos are read: longest',
        value: worst,
        unit: 'ms',
        bar: { at: 'most', value: 50 },
        note,
      },
      {
        name: 'a photo of 48 megapixels: sides read',
        value: one.sides,
        unit: '',
        bar: { at: 'least', value: 6 },
        note: `${(one.milliseconds / 1000).toFixed(1)} s, ${service.peakMegabytes()} MB in all`,
      },
    ];
  } finally {
    await service.stop();
  }
}

/** What the loop did since this was last asked, in ms. */
export async function lagOf(
  address: string,
): Promise<{ readonly max: number; readonly p99: number }> {
  const text = await (await fetch(`${address}/api/metrics`)).text();
  const figure = (name: string): number =>
    1000 * Number(new RegExp(`^nodejs_eventloop_lag_${name}_seconds (\\S+)$`, 'm').exec(text)?.[1]);
  return { max: figure('max'), p99: figure('p99') };
}
