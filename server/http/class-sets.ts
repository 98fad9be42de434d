import { z } from 'zod';
import * as Wire from '../contract/class-sets.ts';
import { StockAsked } from '../contract/stock-paper.ts';
import { answers } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { forPeople, guideAskOf } from './guide-ask.ts';
import { planAt } from './make-plan.ts';

export function classSetRoutes(app: Service, edges: Edges): void {
  app.get(
    '/api/plans/:plan/class-set',
    {
      config: { phone: true },
      schema: {
        summary: 'What the batch takes for several people: sheets, pads, stacks and bags.',
        params: z.object({ plan: z.string() }),
        querystring: Wire.ForPeople.extend(StockAsked.shape),
        response: answers({ 200: Wire.ClassSet }),
      },
    },
    async (request) => {
      const kept = await planAt(edges, request.params.plan);
      const ask = { ...guideAskOf(kept, request.query), ...forPeople(request.query) };
      const { set, labels } = await edges.desk.clerk.classSet(ask);
      return {
        ...set,
        ofSheets: set.ofSheets.map(({ sheet, needed }) => ({
          sheet: sheet.id,
          label: sheet.label,
          needed,
          inPad: sheet.copies,
        })),
        stacks: set.stacks.map(({ sheets, of }) => ({
          sheets,
          of: of.map((one) => ({ ...one, label: labels[one.slot]! })),
        })),
        cardstock: [...set.cardstock],
        said: [...set.said],
      };
    },
  );
}
