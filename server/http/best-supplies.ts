import { z } from 'zod';
import { StockAsked } from '../contract/stock-paper.ts';
import * as Wire from '../contract/supplies.ts';
import { occasionsOf } from '../guide/occasions.ts';
import { withoutOutlines, withoutPlacesOn } from '../pad/less-of-side.ts';
import type { Side } from '../pad/pad.ts';
import type { Records } from '../store/records.ts';
import { twinsAmong } from '../supplies/alike.ts';
import type { Occasion } from '../supplies/best-for.ts';
import type { Supply } from '../supplies/supply.ts';
import { answers } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { guideAskOf, withShelfNow } from './guide-ask.ts';
import { planAt } from './make-plan.ts';
import type { KeptPlan } from './make-plan.ts';
import { isInPalettes } from './is-in-palettes.ts';
import { namedSides } from './named-sides.ts';
import { photosOf, picturesAsOne } from './one-picture.ts';
import { suppliesBeside } from './supplies-beside.ts';
import { bestOnWire } from './wire/best-supplies.ts';
import type { Cardstock } from './wire/best-supplies.ts';

const SidePath = z.object({ side: z.string() });
const OneColour = z.object({
  colour: z.coerce
    .number()
    .int()
    .min(0)
    .optional()
    .describe('Only for the colour at this place in its palette; none asks of the whole side.'),
});
const PlanPath = z.object({ plan: z.string() });
const OneCard = StockAsked.extend({
  card: z.coerce.number().int().min(1).optional().describe('Only for this card of the plan.'),
});

/** The best of what she has, and what is missing: for a side, a card or a whole plan. */
export function bestSupplyRoutes(app: Service, edges: Edges): void {
  const { read } = edges.store;
  const { clerk } = edges.desk;

  app.get(
    '/api/supplies/twins',
    {
      schema: {
        summary:
          'Supplies that can hardly be told from one of the same kind that was there before.',
        response: answers({ 200: Wire.Twins }),
      },
    },
    async () => {
      const supplies = await read.supplies.all();
      const [asSeen] = await asOnePicture(read, supplies, []);
      const twins = twinsAmong(asSeen);
      return { twins: twins.map(({ first, again }) => ({ first: first.id, again: again.id })) };
    },
  );

  app.get(
    '/api/sides/:side/supplies',
    {
      schema: {
        summary: 'The best of her supplies for a side, and what is missing.',
        params: SidePath,
        querystring: OneColour,
        response: answers({ 200: Wire.BestSupplies }),
      },
    },
    async (request) => {
      const { side: id } = request.params;
      const [side] = await namedSides(read, [found(await read.sides.at(id), 'side', id)]);
      const { colour } = request.query;
      isInPalettes(colour, [side!]);
      const supplies = await suppliesBeside(read, side!.pad);
      const asked = await asOnePicture(read, supplies, [besideOf(side!, supplies, colour)]);
      return bestOnWire(await clerk.best(...asked), null);
    },
  );

  app.get(
    '/api/plans/:plan/supplies',
    {
      schema: {
        summary: 'The best of her supplies for a plan or one card of it, and what is missing.',
        params: PlanPath,
        querystring: OneCard,
        response: answers({ 200: Wire.BestSupplies }),
      },
    },
    async (request) => {
      const kept = await withShelfNow(read, await planAt(edges, request.params.plan));
      const { card } = request.query;
      const supplies = await suppliesBeside(read, kept.pad.id);
      const occasions = occasionsOf(guideAskOf(kept)).filter(
        (one) => card === undefined || one.card === card,
      );
      if (card !== undefined) found(occasions[0] ?? null, 'card', String(card));
      const best = await clerk.best(...(await asOnePicture(read, supplies, occasions)));
      return bestOnWire(best, await cardstockOf(edges, kept, request.query));
    },
  );
}

/** What cardstock a plan, or one card of it, is cut from. */
async function cardstockOf(
  { desk }: Edges,
  kept: KeptPlan,
  { card, stock }: z.infer<typeof OneCard>,
): Promise<Cardstock> {
  const all = guideAskOf(kept, { stock });
  const cards = all.plan.cards.filter(({ number }) => card === undefined || number === card);
  const ask = { ...all, plan: { ...all.plan, cards } };
  const needs = await desk.clerk.stockNeeds(all, card ?? null);
  return { ask: { ...ask, picture: () => null }, needs };
}

/** A side by itself: a greeting goes on its ground or on any of her cardstock. */
function besideOf(side: Side, supplies: readonly Supply[], colour?: number): Occasion {
  const ground = side.palette.colours.find(({ role }) => role === 'ground');
  const strips = supplies
    .filter(({ kind, sheets }) => kind === 'cardstock' && sheets !== 0)
    .map(({ lab }) => lab);
  return {
    card: 0,
    sides: [side],
    strips: ground === undefined ? strips : [ground.lab, ...strips],
    wantsCardstock: true,
    wantsAccent: true,
    colour,
  };
}

/** The same, with one name for one picture, so that what lies together is compared as lying together. */
async function asOnePicture(
  read: Records,
  supplies: readonly Supply[],
  occasions: readonly Occasion[],
): Promise<[Supply[], Occasion[]]> {
  const sides = occasions.flatMap((one) => one.sides);
  const one = picturesAsOne(await photosOf(read, [...supplies, ...sides]));
  return [
    supplies.map((supply) => ({
      ...supply,
      photo: supply.photo === null ? null : one(supply.photo),
    })),
    occasions.map((occasion) => ({
      ...occasion,
      sides: occasion.sides.map((side) => ({ ...seenBySupplies(side), photo: one(side.photo) })),
    })),
  ];
}

/** A side as supplies are held against it: its colours, not where they lie nor what is printed in them. */
function seenBySupplies(side: Side): Side {
  return withoutOutlines(withoutPlacesOn(side));
}
