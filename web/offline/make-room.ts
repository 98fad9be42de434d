/** Of what the browser lets the page have, half stays free: photos that wait to be sent come first. */
const SHARE = 0.5;
/** Some browsers do not tell how little room there is, so more than this is never taken; in bytes, about 40 pads. */
const MOST = 500e6;

type Shelf = Pick<Cache, 'match' | 'delete'>;

interface Filled {
  readonly addresses: readonly string[];
  /** The addresses of each pad that may go, the one to go first first. */
  readonly pads: readonly (readonly string[])[];
  /** Bytes of all that the page has kept, with what waits to be sent, and what it may have, as the browser tells. */
  readonly usage: number;
  readonly quota: number;
}

/**
 * Takes pad after pad off the shelf while the copies on it take more than their room. What else is kept,
 * such as photos that wait to be sent, does not count: no copy is given up for it.
 */
export async function makeRoom(shelf: Shelf, filled: Filled): Promise<void> {
  const { addresses, pads, usage, quota } = filled;
  const room = Math.min(quota * SHARE, MOST);
  // The shelf is a part of it, so that it need not be measured as long as all of it is less.
  if (usage <= room) return;
  const sizes = new Map<string, number>();
  for (const address of addresses) sizes.set(address, await sizeAt(shelf, address));
  let over = [...sizes.values()].reduce((sum, size) => sum + size, 0) - room;
  for (const pad of pads) {
    if (over <= 0) return;
    // What is gone is counted here: a browser may tell it only later.
    for (const address of pad) {
      await shelf.delete(address);
      over -= sizes.get(address) ?? 0;
    }
  }
}

async function sizeAt(shelf: Shelf, address: string): Promise<number> {
  return (await (await shelf.match(address))?.blob())?.size ?? 0;
}
