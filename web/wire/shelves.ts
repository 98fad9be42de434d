import { isSeen, onComingBack } from '../table/coming-back.ts';
import { service } from './service.ts';
import { shelfOf as shelfWith, type Shelf } from './kept.ts';

function shelfOf<T>(read: (key: string) => Promise<T>): Shelf<T> {
  return shelfWith(read, { isSeen, onComingBack });
}

/** What the page knows of the service's values, one shelf a noun. */
export const padList = shelfOf(() => service.pads());
export const pads = shelfOf((pad) => service.pad(pad));
export const layouts = shelfOf(() => service.layouts());
export const plans = shelfOf((plan) => service.plan(plan));
/** The plans of a pad, the oldest first. */
export const plansOf = shelfOf((pad) => service.plans(pad));
/** How the sheets of a plan are cut, at the key `plan/ruler/people/stack`. */
export const cuts = shelfOf((key) => {
  const [plan, ruler, people, stack] = key.split('/');
  return service.cuts(plan!, ruler!, people!, stack!);
});
/** Cardstock, cards and shopping of a plan's guide, at the key `plan/ruler/stock`. */
export const guides = shelfOf((key) => {
  const [plan, ruler, stock] = key.split('/');
  return service.guide(plan!, ruler!, stock!);
});
/** What a plan takes for several people, at the key `plan/people/stack/stock`. */
export const classSets = shelfOf((key) => {
  const [plan, people, stack, stock] = key.split('/');
  return service.classSet(plan!, people!, stack!, stock!);
});
/** Kept parts of sheets, at the key `pad/plan`, with the plan's use of them, or `pad/`. */
export const leftovers = shelfOf((key) => {
  const [pad, plan] = key.split('/');
  return service.leftovers(pad!, plan!);
});
/** The steps of the guide of a plan that are done. */
export const ticks = shelfOf((plan) => service.ticks(plan));
/** What this device may see, at the key `all`. */
export const me = shelfOf(() => service.me());
export const keys = shelfOf(() => service.keys());
export const supplies = shelfOf(() => service.supplies());
/** The photos that supplies were found in, at the key `all`. */
export const supplyPhotos = shelfOf(() => service.supplyPhotos());
/** The words that may be typed for a colour, at the key `all`. */
export const colourNames = shelfOf(() => service.colourNames());

/** What could lie in a layer of a planned card, at the key `plan/card/layer`. */
export const layerChoices = shelfOf((key) => {
  const [plan, card, layer] = key.split('/');
  return service.layerChoices(plan!, card!, layer!);
});

/** The companions of a side, best first, at the key `pad/side`. */
export const companions = shelfOf((key) => {
  const [pad, side] = key.split('/');
  return service.companions(pad!, side!);
});

/** The verdicts of some supplies against one side, at the key `side/supply,supply`; `/2` after it asks of the third colour alone. */
export const matches = shelfOf((key) => {
  const [side, list, colour] = key.split('/');
  return service.matches(
    list!.split(','),
    side!,
    colour === undefined ? undefined : Number(colour),
  );
});

/** The best of her supplies for a side, at the key of its id, `/` and what she has; `/2` after it asks of the third colour alone. */
export const bestOfSide = shelfOf((key) => {
  const [side, , colour] = key.split('/');
  return service.bestOfSide(side!, colour);
});
/** The same for a plan, with the sheets of her cardstock between. */
export const bestOfPlan = shelfOf((key) => {
  const [plan, stock] = key.split('/');
  return service.bestOfPlan(plan!, stock!);
});

/** Supplies that can hardly be told from others of hers, at the key of what she has. */
export const twins = shelfOf(() => service.twins());
