import { z } from 'zod';
import { ForPeople } from '../contract/class-sets.ts';
import * as Wire from '../contract/plan-guides.ts';
import { StockAsked } from '../contract/stock-paper.ts';
import type { GuideAsk } from '../guide/ask.ts';
import { slotDrawing } from '../guide/slots-on-screen.ts';
import { answers, fileAnswer } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { shownAs } from './file-name.ts';
import { forPeople, guideAskOf, withShelfNow } from './guide-ask.ts';
import type { HowMeasured } from './guide-ask.ts';
import { found } from './found.ts';
import { withOwnParts } from './first-of-work.ts';
import { fromPartsOf } from './leftovers.ts';
import { planAt } from './make-plan.ts';
import type { KeptPlan } from './make-plan.ts';
import { ONLY_A_PICTURE } from './only-a-picture.ts';
import { LABOUR } from './security.ts';
import { swatchFilesOf, swatchesInside } from './kept-swatches.ts';

const GuidePath = z.object({ plan: z.string() });

const HowPrinted = z.object({
  paper: z.enum(['letter', 'a4']).optional().describe('Left out: letter for a ruler in inches.'),
  ruler: z.enum(['in', 'mm']).optional().describe('Left out: the ruler of the pad.'),
});

export function guideRoutes(app: Service, edges: Edges): void {
  const { desk } = edges;

  app.get(
    '/api/plans/:plan/guide.pdf',
    {
      config: { ...LABOUR, phone: true },
      schema: {
        summary: 'The guide that she cuts from.',
        params: GuidePath,
        querystring: HowPrinted.extend(ForPeople.shape).extend(StockAsked.shape),
        response: answers({ 200: fileAnswer('application/pdf', 'A PDF, true to scale.') }),
      },
    },
    async (request, reply) => {
      const kept = await withShelfNow(edges.store.read, await planAt(edges, request.params.plan));
      const { query } = request;
      const ask = await cutAsk(edges, kept, { ...query, stock: query.stock ?? query.paper });
      const paper = query.paper ?? (ask.ruler === 'in' ? 'letter' : 'a4');
      const swatchFiles = await swatchFilesOf(edges, kept);
      const pdf = await desk.guide({ ask, swatchFiles, paper, made: kept.createdAt });
      return reply
        .type('application/pdf')
        .header(
          'content-disposition',
          shownAs([kept.pad.name, ask.title, kept.createdAt.slice(0, 10)], 'pdf'),
        )
        .serializer((sent: string) => sent)
        .send(Buffer.from(pdf));
    },
  );

  app.get(
    '/api/plans/:plan/cuts',
    {
      config: { phone: true },
      schema: {
        summary: 'How each sheet is cut, in the order of the hands, for a screen at the table.',
        params: GuidePath,
        querystring: HowPrinted.pick({ ruler: true }).extend(ForPeople.shape),
        response: answers({ 200: Wire.PlanCuts }),
      },
    },
    async (request) => {
      const kept = await planAt(edges, request.params.plan);
      const ask = await cutAsk(edges, kept, request.query);
      const { rounding, slots } = await desk.clerk.cutsOnScreen(ask);
      return {
        rounding,
        slots: slots.map((one) => ({
          ...one,
          picture: `/api/plans/${kept.id}/slots/${one.slot}.svg`,
        })),
      };
    },
  );

  app.get(
    '/api/plans/:plan/slots/:slot.svg',
    {
      config: { phone: true },
      schema: {
        summary: 'A sheet with its numbered cuts, as a drawing.',
        params: z.object({ plan: z.string(), slot: z.string() }),
        response: answers({ 200: fileAnswer('image/svg+xml', 'An SVG.') }),
      },
    },
    async (request, reply) => {
      const kept = await planAt(edges, request.params.plan);
      const { slot } = request.params;
      const sheet = found(kept.batch.plan.slots[slot] ?? null, 'slot', slot);
      const { front, back } = kept.pad.sheets.find(({ id }) => id === sheet)!;
      const sides = [front, back].flatMap((side) => (side === null ? [] : [side.id]));
      const picture = await swatchesInside(edges, kept, sides);
      return reply
        .type('image/svg+xml')
        .header('content-security-policy', ONLY_A_PICTURE)
        .header('cache-control', 'private, max-age=3600')
        .serializer((sent: string) => sent)
        .send(slotDrawing({ ...guideAskOf(kept), picture }, slot));
    },
  );
}

type HowCut = ForPeople & HowMeasured;

/** With the parts that were kept: they serve one person; for several, every sheet is cut in stacks. */
async function cutAsk(
  edges: Edges,
  kept: KeptPlan,
  how: HowCut,
): Promise<Omit<GuideAsk, 'picture'>> {
  const alone = (how.people ?? 1) === 1;
  if (!alone) return { ...guideAskOf(kept, how), ...forPeople(how), fromParts: [] };
  const rows = await edges.store.read.leftovers.ofPad(kept.pad.id);
  const fromParts = fromPartsOf(kept, await withOwnParts(edges, kept, rows));
  return { ...guideAskOf(kept, how), ...forPeople(how), fromParts };
}
