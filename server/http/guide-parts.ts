import { z } from 'zod';
import * as Wire from '../contract/plan-guides.ts';
import { StockAsked } from '../contract/stock-paper.ts';
import { answers, fileAnswer } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { guideAskOf, withShelfNow } from './guide-ask.ts';
import { planAt } from './make-plan.ts';
import { ONLY_A_PICTURE } from './only-a-picture.ts';

const HowAsked = StockAsked.extend({
  ruler: z.enum(['in', 'mm']).optional().describe('Left out: the ruler of the pad.'),
});

/** The guide in parts: cardstock, cards and what to buy, as values for a screen at the table. */
export function guidePartsRoutes(app: Service, edges: Edges): void {
  app.get(
    '/api/plans/:plan/guide',
    {
      config: { phone: true },
      schema: {
        summary: 'Cardstock with its cuts, cards with their layers, and what to buy.',
        params: z.object({ plan: z.string() }),
        querystring: HowAsked,
        response: answers({ 200: Wire.PlanGuide }),
      },
    },
    async (request) => {
      const kept = await withShelfNow(edges.store.read, await planAt(edges, request.params.plan));
      const guide = await edges.desk.clerk.guideOnScreen(guideAskOf(kept, request.query));
      const asked = queryOf(request.query);
      return {
        ...guide,
        cardstock: guide.cardstock.map((stock) => ({
          ...stock,
          sheets: stock.sheets.map((one) => ({
            ...one,
            picture: `/api/plans/${kept.id}/cardstock/${one.id}.svg${asked}`,
          })),
        })),
        cards: guide.cards.map((card) => ({
          ...card,
          picture: `/api/plans/${kept.id}/cards/card-${card.number}.png`,
        })),
      };
    },
  );

  app.get(
    '/api/plans/:plan/cardstock/:sheet.svg',
    {
      config: { phone: true },
      schema: {
        summary: 'A sheet of cardstock with its numbered cuts, as a drawing.',
        params: z.object({ plan: z.string(), sheet: z.string() }),
        querystring: HowAsked,
        response: answers({ 200: fileAnswer('image/svg+xml', 'An SVG.') }),
      },
    },
    async (request, reply) => {
      const kept = await planAt(edges, request.params.plan);
      const { sheet } = request.params;
      const ask = guideAskOf(kept, request.query);
      const drawing = await edges.desk.clerk.stockDrawing(ask, sheet);
      return reply
        .type('image/svg+xml')
        .header('content-security-policy', ONLY_A_PICTURE)
        .header('cache-control', 'private, max-age=3600')
        .serializer((sent: string) => sent)
        .send(found(drawing, 'cardstock sheet', sheet));
    },
  );
}

/** The drawings are asked for as the guide was. */
function queryOf(asked: z.infer<typeof HowAsked>): string {
  const named = Object.entries(asked).flatMap(([name, value]): [string, string][] =>
    value === undefined ? [] : [[name, value]],
  );
  const query = new URLSearchParams(named).toString();
  return query === '' ? '' : `?${query}`;
}
