import { describe, expect, it } from 'vitest';
import { idIn, idsIn, ownerOf, padTold } from '../../web/offline/belonging.ts';
import { MOST_PADS, MOST_PLANS, whatGoes, whatGoesFirst } from '../../web/offline/what-goes.ts';

const owners = new Map<string, string | null>([
  ['front', 'tide'],
  ['plan', 'tide'],
  ['of-supplies', null],
]);

describe('whose a kept answer is', () => {
  it.each([
    ['/', 'all'],
    ['/assets/main-abc.js', 'all'],
    ['/api/pads', 'all'],
    ['/api/layouts', 'all'],
    ['/api/supplies', 'all'],
    ['/api/photos/of-supplies/picture', 'all'],
    ['/api/plans/plan/ticks', 'all'],
    ['/api/plans/deleted/ticks', 'all'],
    ['/api/sides/gone/swatch?of=12', 'nothing'],
    ['/api/plans/gone', 'nothing'],
  ] as const)('%s: %s', (address, owner) => {
    expect(ownerOf(address, owners)).toBe(owner);
  });

  it.each([
    ['/api/pads/tide', null],
    ['/api/pads/tide/leftovers?plan=plan', null],
    ['/api/plans?pad=tide', null],
    ['/api/sides/front/swatch?of=12&width=240', null],
    ['/api/plans/plan', 'plan'],
    ['/api/plans/plan/cards/card-1.svg?papers=beside', 'plan'],
  ])('%s is of the pad', (address, plan) => {
    expect(ownerOf(address, owners)).toEqual({ pad: 'tide', plan });
  });

  it('knows the answers that say so', () => {
    expect(padTold('/api/pads/tide')).toBe('tide');
    expect(padTold('/api/plans?pad=tide')).toBe('tide');
    expect(padTold('/api/pads/tide/leftovers')).toBeNull();
    expect(padTold('/api/pads')).toBeNull();
    expect(idIn('/api/sides/front/swatch?of=12')).toBe('front');
    expect(idIn('/api/pads/tide')).toBeNull();
    const text = JSON.stringify({ id: 'tide', sheets: [{ front: { id: 'front' } }] });
    expect(idsIn(text, new Set(['front', 'back']))).toEqual(['front']);
  });
});

describe('what goes from the shelf', () => {
  const pads = Array.from({ length: MOST_PADS + 2 }, (_, n) => `pad-${n}`);

  it('are the pads looked at longest ago, in whatever order they were fetched', () => {
    const addresses = pads.map((pad) => `/api/pads/${pad}`);
    const looked = pads.toReversed();
    expect(whatGoes({ addresses, owners, looked })).toEqual(['/api/pads/pad-1', '/api/pads/pad-0']);
    expect(whatGoes({ addresses, owners, looked: pads })).toEqual([
      `/api/pads/${pads.at(-1)}`,
      `/api/pads/${pads.at(-2)}`,
    ]);
  });

  it('are pads of which only the stack in the list was seen, before those that were looked at', () => {
    const addresses = pads.map((pad) => `/api/pads/${pad}`);
    const looked = ['pad-0', 'pad-1'];
    expect(whatGoes({ addresses, owners, looked })).toEqual(['/api/pads/pad-3', '/api/pads/pad-2']);
  });

  it('counts no pad that was looked at but is deleted or not on the shelf', () => {
    const deleted = Array.from({ length: MOST_PADS }, (_, n) => `deleted-${n}`);
    const addresses = ['/api/pads/tide', '/api/sides/front/swatch', '/api/pads/other'];
    expect(whatGoes({ addresses, owners, looked: [...deleted, 'tide'] })).toEqual([]);
    // The first of those that are here is the one on the table.
    expect(whatGoesFirst({ addresses, owners, looked: [...deleted, 'tide'] })).toEqual([
      ['/api/pads/other'],
    ]);
  });

  it('are the older plans of a pad, whole, and never their ticks', () => {
    const plans = Array.from({ length: MOST_PLANS + 1 }, (_, n) => `plan-${n}`);
    const known = new Map(plans.map((plan) => [plan, 'tide']));
    const addresses = plans.flatMap((plan) => [
      `/api/plans/${plan}`,
      `/api/plans/${plan}/cards/card-1.svg?papers=beside`,
      `/api/plans/${plan}/ticks`,
    ]);
    const gone = whatGoes({ addresses, owners: known, looked: ['tide'] });
    expect(gone.toSorted()).toEqual([
      '/api/plans/plan-0',
      '/api/plans/plan-0/cards/card-1.svg?papers=beside',
    ]);
  });

  it('is what belongs to nothing any more', () => {
    const addresses = [
      '/',
      '/api/pads',
      '/api/pads/tide',
      '/api/sides/gone/swatch',
      '/api/plans/x',
    ];
    expect(whatGoes({ addresses, owners, looked: ['tide'] }).toSorted()).toEqual([
      '/api/plans/x',
      '/api/sides/gone/swatch',
    ]);
  });

  it('is, where room is short, one pad after the other, but neither the one on the table nor a tick', () => {
    const addresses = [
      '/api/pads',
      '/api/pads/older',
      '/api/pads/tide',
      '/api/plans/plan/ticks',
      '/api/sides/front/swatch',
      '/api/pads/now',
    ];
    expect(whatGoesFirst({ addresses, owners, looked: ['now', 'tide', 'older'] })).toEqual([
      ['/api/pads/older'],
      ['/api/pads/tide', '/api/sides/front/swatch'],
    ]);
  });
});
