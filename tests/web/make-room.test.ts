import { describe, expect, it } from 'vitest';
import { makeRoom } from '../../web/offline/make-room.ts';

const PADS = [['/api/pads/old', '/api/sides/old/swatch'], ['/api/pads/newer']];
const addresses = ['/', '/api/pads/on-table', ...PADS.flat()];

/** A shelf with 100 bytes at each address. */
function shelfOf(): { left: Set<string>; shelf: Pick<Cache, 'match' | 'delete'> } {
  const left = new Set(addresses);
  const shelf = {
    match: async (address: RequestInfo | URL) =>
      left.has(address as string) ? new Response('x'.repeat(100)) : undefined,
    delete: async (address: RequestInfo | URL) => left.delete(address as string),
  };
  return { left, shelf };
}

describe('room on the shelf', () => {
  it.each([
    ['40 photos of 15 MB wait to be sent', 600e6, 2e9],
    ['they take nearly all that the browser gives', 1900, 2000],
  ])('is not short because %s', async (_, usage, quota) => {
    const { left, shelf } = shelfOf();
    await makeRoom(shelf, { addresses, pads: PADS, usage, quota });
    expect([...left]).toEqual(addresses);
  });

  it('is made by one pad after the other, no more than it takes', async () => {
    const { left, shelf } = shelfOf();
    await makeRoom(shelf, { addresses, pads: PADS, usage: 500, quota: 600 });
    expect([...left]).toEqual(['/', '/api/pads/on-table', '/api/pads/newer']);
    await makeRoom(shelf, { addresses: [...left], pads: [PADS[1]!], usage: 500, quota: 300 });
    expect([...left]).toEqual(['/', '/api/pads/on-table']);
  });
});
