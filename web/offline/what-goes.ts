import { ownerOf, type Owners } from './belonging.ts';

/** So many pads, those looked at last, open without the service, each with so many plans, those laid by last. */
export const MOST_PADS = 12;
export const MOST_PLANS = 24;

export interface Shelved {
  /** Paths with their queries, in the order in which they were laid by, the newest last. */
  readonly addresses: readonly string[];
  readonly owners: Owners;
  /** Pads in the order in which they were looked at, the one on the table first. */
  readonly looked: readonly string[];
}

/** What of the shelf goes: what belongs to nothing any more, to pads that were not looked at for long, and to older plans. */
export function whatGoes({ addresses, owners, looked }: Shelved): string[] {
  const [pads, plans] = [
    padsInOrder({ addresses, owners, looked }),
    new Map<string, Set<string>>(),
  ];
  const staying = new Set(pads.slice(0, MOST_PADS));
  // From the newest on, so that the first plans met of a pad are those that stay.
  return [...addresses].reverse().filter((address) => {
    const owner = ownerOf(address, owners);
    if (owner === 'all') return false;
    if (owner === 'nothing' || !staying.has(owner.pad)) return true;
    if (owner.plan === null) return false;
    const known = plans.get(owner.pad) ?? new Set();
    plans.set(owner.pad, known);
    if (known.size < MOST_PLANS) known.add(owner.plan);
    return !known.has(owner.plan);
  });
}

/** What goes where room is short: pad after pad, the one looked at longest ago first, and never the one on the table. */
export function whatGoesFirst(shelved: Shelved): string[][] {
  const { addresses, owners } = shelved;
  const pads = padsInOrder(shelved).slice(1).reverse();
  return pads.map((pad) => addresses.filter((address) => isOf(address, pad, owners)));
}

/** Pads with something on the shelf: those she looked at first, then those of which only something was seen, the last seen first. */
function padsInOrder({ addresses, owners, looked }: Shelved): string[] {
  const seen = new Set(
    addresses
      .map((address) => ownerOf(address, owners))
      .flatMap((owner) => (typeof owner === 'string' ? [] : [owner.pad]))
      .reverse(),
  );
  // One that was deleted, or is not kept here, takes no place of another.
  return [...new Set([...looked.filter((pad) => seen.has(pad)), ...seen])];
}

function isOf(address: string, pad: string, owners: Owners): boolean {
  const owner = ownerOf(address, owners);
  return typeof owner !== 'string' && owner.pad === pad;
}
