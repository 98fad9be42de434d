import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { smallSwatches } from '../../server/http/small-swatches.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, newPlan } from './mount.ts';

describe('swatches for the screen', () => {
  test('are as wide as asked, never wider than they are, and made once', async () => {
    const colour = { r: 15, g: 82, b: 87 };
    const bytes = await sharp({
      create: { width: 90, height: 60, channels: 3, background: colour },
    })
      .jpeg()
      .toBuffer();
    let reads = 0;
    const small = smallSwatches({
      read: () => {
        reads += 1;
        return Promise.resolve(bytes);
      },
    });
    const size = async (width: number): Promise<unknown> => {
      const { width: across, height, format } = await sharp(await small('h', width)).metadata();
      return { across, height, format };
    };
    expect(await size(30)).toEqual({ across: 30, height: 20, format: 'jpeg' });
    expect(await size(30)).toEqual({ across: 30, height: 20, format: 'jpeg' });
    expect(reads).toBe(1);
    expect(await size(900)).toEqual({ across: 90, height: 60, format: 'jpeg' });
    const { dominant } = await sharp(await small('h', 30)).stats();
    // sharp bins colours by 16 steps of 256.
    expect(Math.abs(dominant.g - colour.g)).toBeLessThanOrEqual(16);
  });

  test('a drawing with its papers beside is the same drawing, and its papers outlive their photo', async () => {
    const folder = await newFolder();
    const service = await mount(folder);
    const pad = await filledPad(service);
    const plan = await newPlan(service, pad.id);
    const address = plan.cards[0]!.picture.replace('.png', '.svg');
    const inside = (await ask(service, 'GET', address)).payload;
    const beside = (await ask(service, 'GET', `${address}?papers=beside`)).payload;
    const named = [...beside.matchAll(/href="(\/api\/sides\/[^"]+)"/g)].map(([, at]) => at!);
    expect(named.length).toBeGreaterThan(0);
    for (const { id } of pad.photos) await ask(service, 'DELETE', `/api/photos/${id}`);
    await service.stop();
    const again = await mount(folder);
    let filled = beside;
    for (const at of named) {
      const swatch = await ask(again, 'GET', at);
      expect(swatch.statusCode).toBe(200);
      filled = filled.replace(at, `data:image/jpeg;base64,${swatch.rawPayload.toString('base64')}`);
    }
    expect(filled).toBe(inside);
    const other = await ask(again, 'GET', named[0]!.replace(/of=.*/, 'of=000000000000'));
    expect(other.statusCode).toBe(404);
  });
});
