import type { FastifyReply } from 'fastify';
import { z } from 'zod';
import * as Wire from '../contract/plans.ts';
import * as Again from '../contract/plans-again.ts';
import { usualSettings } from '../cutting/settings.ts';
import type { Waiting } from '../photo-desk.ts';
import type { OtherPlan, Swap } from '../plan/plan-desk.ts';
import type { AgainTask } from '../photo-worker.ts';
import { answers, fileAnswer } from './answers.ts';
import { drawCard, Papers } from './draw-card.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { keepPlan, planAt, wishesKept } from './make-plan.ts';
import type { KeptPlan } from './make-plan.ts';
import { keyOf, madeBefore } from './once.ts';
import { ONLY_A_PICTURE } from './only-a-picture.ts';
import { otherCards } from './other-cards.ts';
import type { OtherCards } from './other-cards.ts';
import { LABOUR } from './security.ts';
import { suppliesBeside } from './supplies-beside.ts';
import { colourOnWire } from './wire/colours.ts';
import { rulerOf } from './wire/sizes.ts';
import { Drawings, withDrawings } from './with-drawings.ts';

const PlanPath = z.object({ plan: z.string() });

/** She waits for an answer while she looks at the plan, so the search may take this long. */
const PATIENCE = 3000;
/** For each number of sheets. */
const POINT_PATIENCE = 300;

/** What else a plan could be: the next best, one sheet fewer, another number of sheets, a mend for its weakest card. */
export function planAgainRoutes(app: Service, edges: Edges): void {
  const { desk } = edges;
  const cards = otherCards();

  app.get(
    '/api/plans/:plan/others',
    {
      config: LABOUR,
      schema: {
        summary: 'The next best plans, each with another sheet in at least one slot.',
        params: PlanPath,
        querystring: z.object({ count: z.coerce.number().int().min(1).max(9).default(3) }),
        response: answers({ 200: Again.OtherPlans }),
      },
    },
    async (request, reply) => {
      const kept = await planAt(edges, request.params.plan);
      const others = await desk.others(planned(kept), request.query.count, waiting(reply));
      return { others: others.map((other) => otherOnWire(other, kept, cards)) };
    },
  );

  app.get(
    '/api/plans/:plan/others/cards/:card.svg',
    {
      config: LABOUR,
      schema: {
        summary: 'A card as another plan would make it, as a drawing.',
        params: z.object({ plan: z.string(), card: z.string() }),
        querystring: Papers.extend({
          sheets: z
            .string()
            .max(4000)
            .default('')
            .describe('A sheet for each slot, with points between.'),
        }),
        response: answers({ 200: fileAnswer('image/svg+xml', 'An SVG.') }),
      },
    },
    async (request, reply) => {
      const kept = await planAt(edges, request.params.plan);
      const other = await cards.withSheets(edges, kept, request.query.sheets);
      const { papers } = request.query;
      const svg = await drawCard(edges, other, request.params.card, papers);
      return reply
        .type('image/svg+xml')
        .header('content-security-policy', ONLY_A_PICTURE)
        .header('cache-control', 'private, max-age=3600')
        .serializer((sent: string) => sent)
        .send(svg);
    },
  );

  app.get(
    '/api/plans/:plan/without/:sheet',
    {
      config: LABOUR,
      schema: {
        summary: 'The best plan if a sheet is gone, and what that changes.',
        params: z.object({ plan: z.string(), sheet: z.string() }),
        response: answers({ 200: Again.OtherPlan }),
      },
    },
    async (request, reply) => {
      const kept = await planAt(edges, request.params.plan);
      const { sheet: id } = request.params;
      found(kept.pad.sheets.find((sheet) => sheet.id === id) ?? null, 'sheet', id);
      return otherOnWire(await desk.without(planned(kept), id, waiting(reply)), kept, cards);
    },
  );

  app.get(
    '/api/plans/:plan/curve',
    {
      config: LABOUR,
      schema: {
        summary:
          'What fewer sheets cost: the best plan found for every number of sheets. Answers at once with what is known; ask again until it is complete.',
        params: PlanPath,
        response: answers({ 200: Again.SheetCurve }),
      },
    },
    async (request, reply) => {
      const kept = await planAt(edges, request.params.plan);
      const settings = usualSettings(rulerOf(kept.pad.sheetSize));
      const wait = { ...waiting(reply), milliseconds: POINT_PATIENCE };
      const curve = await desk.curve(planned(kept), { settings, plan: kept.id }, wait);
      // Cards without patterned paper take no sheets, and no number of them can be asked for.
      const points = curve.points.filter(({ sheets }) => sheets > 0);
      const most = Math.max(1e-9, ...points.map(({ value }) => value));
      return {
        points: points.map((point) => ({ ...point, part: point.value / most })),
        complete: curve.complete,
      };
    },
  );

  app.get(
    '/api/plans/:plan/weakest',
    {
      config: LABOUR,
      schema: {
        summary: 'The weakest card and what would mend it.',
        params: PlanPath,
        response: answers({ 200: Again.Weakest }),
      },
    },
    async (request) => {
      const kept = await planAt(edges, request.params.plan);
      const weakest = found(await desk.weakest(planned(kept)), 'card', request.params.plan);
      const { number: card, score, mends, taken } = weakest;
      return {
        card,
        score,
        taken,
        mends: mends.map(({ wanted, swap, ...mend }) => ({
          ...mend,
          ...(wanted === undefined
            ? {}
            : { wanted: { ...colourOnWire(wanted.lab), layers: [...wanted.layers] } }),
          ...(swap === undefined ? {} : { swap: swapOnWire(swap) }),
        })),
      };
    },
  );

  app.post(
    '/api/plans/:plan/taken',
    {
      config: LABOUR,
      schema: {
        summary: 'Have a plan with the same cuts and other sheets in its slots.',
        params: PlanPath,
        querystring: Drawings,
        body: Again.TakenPlan,
        response: answers({ 201: Wire.Plan }),
      },
    },
    async (request, reply) => {
      const question = keyOf(request, request.body);
      const before = await madeBefore(edges.store.read, question);
      const kept = await planAt(edges, before?.[0] ?? request.params.plan);
      const plan = before === null ? await take(kept) : kept;
      const answer = await withDrawings(edges, plan, request.query);
      return reply.code(201).header('location', `/api/plans/${plan.id}`).send(answer);

      async function take(from: KeptPlan): Promise<KeptPlan> {
        const { slots, supplies } = request.body;
        const so = supplies === 'now' ? await onShelfNow(edges, from) : from;
        const among = from.asked.sheets === undefined ? 'these cuts' : 'any cuts';
        const batch = await (supplies === 'now'
          ? desk.withSheets(planned(so), slots, { ...waiting(reply), among })
          : desk.withSheets(planned(so), slots));
        const asked = { ...so.asked, from: from.id, anew: undefined };
        const fresh = { ...so, asked, id: edges.newId(), createdAt: edges.now(), batch };
        return keepPlan(edges, fresh, question);
      }
    },
  );
}

/** The search ends when the connection does: she has asked for something else. */
function waiting(reply: FastifyReply): Waiting {
  const gone = new AbortController();
  reply.raw.once('close', () => gone.abort());
  return { milliseconds: PATIENCE, gone: gone.signal };
}

/** The plan as if it had been made from what she has now; pins of a cardstock or an ink that is no more go with it. */
async function onShelfNow({ store }: Edges, kept: KeptPlan): Promise<KeptPlan> {
  const supplies = await suppliesBeside(store.read, kept.pad.id);
  const { pins = [] } = kept.asked;
  const left = pins.filter(
    ({ supply }) => supply === undefined || supplies.some(({ id }) => id === supply),
  );
  return { ...kept, supplies, asked: { ...kept.asked, pins: left } };
}

function planned(kept: KeptPlan): AgainTask['planned'] {
  return { batch: kept.batch, ask: wishesKept(kept) };
}

function otherOnWire(other: OtherPlan, kept: KeptPlan, cards: OtherCards): Again.OtherPlan {
  const { plan, swaps, changes } = other;
  const { value, bound, proven, slots } = plan;
  return {
    value,
    gain: value - kept.batch.plan.value,
    bound,
    proven,
    swaps: swaps.map(swapOnWire),
    changes: [...changes],
    pictures: cards.picturesOf(kept, other),
    slots: { ...slots },
  };
}

function swapOnWire({ slot, from, to, cards }: Swap): Again.Swap {
  return { slot, from, to, cards: [...cards] };
}
