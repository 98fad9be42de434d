import { z } from 'zod';
import { answers, fileAnswer } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { guideAskOf } from './guide-ask.ts';
import { planAt } from './make-plan.ts';
import { LABOUR } from './security.ts';

const GuidePath = z.object({ plan: z.string() });

const HowPrinted = z.object({
  paper: z.enum(['letter', 'a4']).optional().describe('Left out: letter for a ruler in inches.'),
  ruler: z.enum(['in', 'mm']).optional().describe('Left out: the ruler of the pad.'),
});

export function guideRoutes(app: Service, edges: Edges): void {
  const { store, desk } = edges;

  app.get(
    '/api/plans/:plan/guide.pdf',
    {
      config: { ...LABOUR, phone: true },
      schema: {
        summary: 'The guide that she cuts from.',
        params: GuidePath,
        querystring: HowPrinted,
        response: answers({ 200: fileAnswer('application/pdf', 'A PDF, true to scale.') }),
      },
    },
    async (request, reply) => {
      const kept = await planAt(edges, request.params.plan);
      const ask = guideAskOf(kept, request.query.ruler);
      const paper = request.query.paper ?? (ask.ruler === 'in' ? 'letter' : 'a4');
      const swatchFiles: Record<string, string> = {};
      for (const [side, hash] of Object.entries(kept.swatches))
        swatchFiles[side] = await store.files.readable('swatches', hash);
      const pdf = await desk.guide({ ask, swatchFiles, paper, made: kept.createdAt });
      return reply
        .type('application/pdf')
        .header('content-disposition', 'inline; filename="guide.pdf"')
        .serializer((sent: string) => sent)
        .send(Buffer.from(pdf));
    },
  );
}
