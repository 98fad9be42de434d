import { z } from 'zod';
import * as Wire from '../contract/plans.ts';
import * as Guides from '../contract/plan-guides.ts';
import { NOTHING, answers, fileAnswer } from './answers.ts';
import { drawCard, Papers } from './draw-card.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { makePlan, planAt } from './make-plan.ts';
import { keyOf, madeBefore } from './once.ts';
import { LABOUR } from './security.ts';
import { ONLY_A_PICTURE } from './only-a-picture.ts';
import { listOnWire } from './wire/plan-list.ts';
import { planOnWire } from './wire/plans.ts';
import { Drawings, withDrawings } from './with-drawings.ts';

const PlanPath = z.object({ plan: z.string() });
const CardPath = z.object({ plan: z.string(), card: z.string() });
const PictureSize = z.object({
  width: z.coerce.number().int().min(64).max(2400).default(720).describe('Pixels.'),
});

/** A plan never changes; a newer Plyhue may draw it better. */
const FOR_A_WHILE = 'private, max-age=3600';

export function planRoutes(app: Service, edges: Edges): void {
  const { store } = edges;

  app.post(
    '/api/plans',
    {
      config: LABOUR,
      schema: {
        summary: 'Plan a batch of cards from a pad.',
        querystring: Drawings,
        body: Wire.NewPlan,
        response: answers({ 201: Wire.Plan }),
      },
    },
    async (request, reply) => {
      const question = keyOf(request, request.body);
      const before = await madeBefore(store.read, question);
      const plan =
        before === null
          ? await makePlan(edges, request.body, question)
          : await planAt(edges, before[0]!);
      const answer = await withDrawings(edges, plan, request.query);
      return reply.code(201).header('location', `/api/plans/${plan.id}`).send(answer);
    },
  );

  app.get(
    '/api/plans',
    {
      config: { phone: true },
      schema: {
        summary: 'All plans, or those of one pad, the oldest first.',
        querystring: z.object({ pad: z.string().optional() }),
        response: answers({ 200: Wire.PlanList }),
      },
    },
    async (request) => {
      const { pad } = request.query;
      const { plans } = store.read;
      const rows = await (pad === undefined ? plans.all() : plans.ofPad(pad));
      return { plans: listOnWire(rows, await plans.tickCounts(pad ?? null)) };
    },
  );

  app.get(
    '/api/plans/:plan',
    {
      config: { phone: true },
      schema: { summary: 'A plan.', params: PlanPath, response: answers({ 200: Wire.Plan }) },
    },
    async (request) => planOnWire(await planAt(edges, request.params.plan)),
  );

  app.get(
    '/api/plans/:plan/cards/:card.png',
    {
      config: { ...LABOUR, phone: true },
      schema: {
        summary: 'A card with the real papers, as a picture.',
        params: CardPath,
        querystring: PictureSize,
        response: answers({ 200: fileAnswer('image/png', 'A PNG.') }),
      },
    },
    async (request, reply) => {
      const kept = await planAt(edges, request.params.plan);
      const svg = await drawCard(edges, kept, request.params.card);
      const png = await edges.desk.drawPng(svg, request.query.width);
      return reply
        .type('image/png')
        .header('cache-control', FOR_A_WHILE)
        .serializer((sent: string) => sent)
        .send(Buffer.from(png));
    },
  );

  app.get(
    '/api/plans/:plan/cards/:card.svg',
    {
      config: { phone: true },
      schema: {
        summary: 'A card with the real papers, as a drawing.',
        params: CardPath,
        querystring: Papers,
        response: answers({ 200: fileAnswer('image/svg+xml', 'An SVG.') }),
      },
    },
    async (request, reply) => {
      const kept = await planAt(edges, request.params.plan);
      const svg = await drawCard(edges, kept, request.params.card, request.query.papers);
      return reply
        .type('image/svg+xml')
        .header('content-security-policy', ONLY_A_PICTURE)
        .header('cache-control', FOR_A_WHILE)
        .serializer((sent: string) => sent)
        .send(svg);
    },
  );

  app.get(
    '/api/plans/:plan/ticks',
    {
      schema: {
        summary: 'The steps of its guide that are done.',
        params: PlanPath,
        response: answers({ 200: Guides.Ticks }),
      },
    },
    async (request) => {
      const { plan: id } = request.params;
      found(await store.read.plans.padOf(id), 'plan', id);
      return { ticks: await store.read.plans.ticks(id) };
    },
  );

  app.post(
    '/api/plans/:plan/ticks',
    {
      schema: {
        summary: 'Tick off a step of its guide, or take the tick back.',
        params: PlanPath,
        body: Guides.Tick,
        response: answers({ 200: Guides.Ticks }),
      },
    },
    async (request) => {
      const { plan: id } = request.params;
      const { step, done } = request.body;
      const { pad, ticks } = await store.write(async ({ plans }) => {
        const whose = found(await plans.padOf(id), 'plan', id);
        await plans.tick(id, step, done);
        return { pad: whose, ticks: await plans.ticks(id) };
      });
      edges.changes.tell(pad);
      return { ticks };
    },
  );

  app.delete(
    '/api/plans/:plan',
    {
      schema: { summary: 'Delete a plan.', params: PlanPath, response: answers({ 204: NOTHING }) },
    },
    async (request, reply) => {
      const { plan: id } = request.params;
      await store.write(async (records) => {
        found(await records.plans.at(id), 'plan', id);
        await records.plans.remove(id);
      });
      return reply.code(204).send();
    },
  );
}
