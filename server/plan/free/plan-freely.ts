import { cutScheme } from '../../cutting/cut-scheme.ts';
import { piecesOf } from '../../cutting/pieces-of.ts';
import type { CuttingScheme, Slot } from '../../cutting/piece.ts';
import { Refusal } from '../../refusals/refusal.ts';
import type { Plan } from '../plan.ts';
import { planCards } from '../plan-cards.ts';
import { planWith } from '../plan-desk.ts';
import { ROUNDING } from '../plan-with.ts';
import type { Best } from '../plan-with.ts';
import { deal } from './deal.ts';
import type { Deal } from './deal.ts';
import { freeWorld } from './free-world.ts';
import type { FreeAsk, FreeWorld } from './free-world.ts';
import { pricesFor } from './prices.ts';
import { onItsSide, turnedSlot } from './stance.ts';
import { tooFew } from './too-few.ts';
import { wantedAt } from './wanted.ts';

export type { FreeAsk } from './free-world.ts';

/** Sheets cut as the plan wants it, and the plan; its bound holds for every way of cutting. */
export interface FreePlan {
  readonly scheme: CuttingScheme;
  readonly plan: Plan;
}

/** Choices that a card considers; more of them find little. */
const CONSIDERED = 600;

/**
 * The best plan found when any piece may come from any sheet.
 *
 * Takes       the pad, the cards, her wishes, how it may be cut, perhaps the most sheets that she gives, a seed and
 *             a limit.
 * Gives       a cutting scheme with a slot for each sheet used, and the plan. Its bound is proven by prices on
 *             the paper, for all ways of cutting; a plan that reaches it is proven best. Refuses 'does-not-fit' when the cards do not come out of the sheets.
 * Checked     by `checkScheme` and `checkPlan`, which know nothing of this.
 */
export function planFreely(ask: FreeAsk): FreePlan {
  const world = freeWorld(ask);
  const { bound, ...found } = searched(world);
  if (found.deal === null) {
    if (found.tight === null) throw found.clash ?? tooFew(world);
    const { scheme, plan } = found.tight;
    const proven = plan.value >= bound - ROUNDING;
    return { scheme, plan: { ...plan, bound: Math.max(plan.value, bound), proven } };
  }
  const { scheme, slots } = cutAs(world, found.deal);
  const best: Best = { bound, proven: true };
  return { scheme, plan: planWith({ ...world.ask, scheme }, best, slots) };
}

export interface Searched {
  readonly deal: Deal | null;
  /** The fullest sheets with their best designs, when nothing better was found. */
  readonly tight: FreePlan | null;
  readonly bound: number;
  /** Why her wishes do not go with the fullest sheets, where that was what stood in the way. */
  readonly clash: Refusal | null;
}

/** The best deal found in a world, and the bound that its prices prove. */
export function searched(world: FreeWorld): Searched {
  const { seed, limit } = world.ask;
  const none = new Float64Array(world.copies.length);
  const loose = deal(world, wantedAt(world, none, CONSIDERED), seed, { steps: FIRST });
  // Sheets filled first turn their pieces one by one, so that of two sides that point different ways both can stand.
  const { tight, clash } = loose === null || world.sideways ? tightPlan(world) : UNTRIED;
  const start = loose ?? (tight === null ? null : dealOf(world, tight));
  const { price, bound } = pricesFor(world, loose?.value ?? tight?.plan.value ?? 0);
  const best = deal(world, wantedAt(world, price, CONSIDERED), seed, limit, start) ?? loose;
  return tight !== null && tight.plan.value > (best?.value ?? -Infinity)
    ? { deal: null, tight, bound, clash }
    : { deal: best, tight: null, bound, clash };
}

/** How often cards are taken back while a first deal is made, without prices. */
const FIRST = 60;
/** Nodes of the search for sheets in the slots of a tight plan. */
const TIGHT = 20_000;

/** When paper is tight, the sheets are filled first, as full as can be, and then given their designs. */
function tightPlan({ ask, most, copies }: FreeWorld): Pick<Searched, 'tight' | 'clash'> {
  const { pad, cards, settings } = ask;
  const scheme = cutScheme(piecesOf(cards).patterned, pad.sheetSize, settings);
  const there = copies.reduce((sum, count) => sum + count, 0);
  if (scheme.slots.length > Math.min(most, there)) return UNTRIED;
  try {
    const plan = planCards({ ...ask, scheme, limit: { steps: TIGHT } });
    return { tight: { scheme, plan }, clash: null };
  } catch (error) {
    if (!(error instanceof Refusal) || error.kind !== 'clash') throw error;
    // On other sheets than the fullest her wishes may yet go together.
    return { tight: null, clash: error };
  }
}

const UNTRIED = { tight: null, clash: null };

function dealOf({ room, instance }: FreeWorld, { scheme, plan }: FreePlan): Deal {
  const lotOf = new Map(
    room.lots.flatMap(({ pieces }, lot) => pieces.map(({ id }) => [id, lot] as const)),
  );
  const sheets = scheme.slots.map(({ id, pieces }) => ({
    design: instance.designs.findIndex(({ sheet }) => sheet.id === plan.slots[id]),
    lots: [...new Set(pieces.map(({ piece }) => lotOf.get(piece.id)!))],
  }));
  return { sheets, value: plan.value };
}

/** The deal as a scheme: the pieces of every sheet cut for themselves. */
function cutAs(
  { ask, room, instance, stance }: FreeWorld,
  { sheets }: Deal,
): { scheme: CuttingScheme; slots: Record<string, string> } {
  const size = ask.pad.sheetSize;
  const slots: Record<string, string> = {};
  const cut = sheets.map(({ design, lots }, at): Slot => {
    const pieces = lots.flatMap((lot) => room.lots[lot]!.pieces);
    const turned = stance[design] === 'turned';
    const laid =
      stance[design] === 'any' ? pieces : pieces.map((piece) => ({ ...piece, keepUp: true }));
    const [slot, more] = cutScheme(laid, turned ? onItsSide(size) : size, ask.settings).slots;
    if (slot === undefined || more !== undefined)
      throw new RangeError('Expected lots that fit one sheet to be cut from one');
    const id = `slot-${at + 1}`;
    slots[id] = instance.designs[design]!.sheet.id;
    return { ...(turned ? turnedSlot(slot, pieces) : slot), id };
  });
  const area = room.lots.reduce((sum, lot) => sum + lot.area, 0);
  const fewestSheets = Math.ceil(area - 1e-9);
  const scheme = { sheet: size, slots: cut, fewestSheets, proven: cut.length === fewestSheets };
  return { scheme, slots };
}
