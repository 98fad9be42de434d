import { z } from 'zod';
import * as Wire from '../contract/plans-again.ts';
import type { LayerChoice } from '../plan/layer-choices.ts';
import { answers } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { planAt, wishesKept } from './make-plan.ts';
import { LABOUR } from './security.ts';

/** What could lie in a layer of a planned card, before she asks for it. */
export function layerChoiceRoutes(app: Service, edges: Edges): void {
  app.get(
    '/api/plans/:plan/cards/:card/layers/:layer/choices',
    {
      config: LABOUR,
      schema: {
        summary: 'What could lie in a layer instead, and which pins forbid it.',
        params: z.object({ plan: z.string(), card: z.string(), layer: z.string() }),
        response: answers({ 200: Wire.LayerChoices }),
      },
    },
    async (request) => {
      const { plan, card: name, layer } = request.params;
      const kept = await planAt(edges, plan);
      const { cards } = kept.batch;
      const card = found(
        cards.find(({ number }) => `card-${number}` === name) ?? null,
        'card',
        name,
      );
      found(card.layout.layers.find(({ id }) => id === layer) ?? null, 'layer', layer);
      const planned = { batch: kept.batch, ask: wishesKept(kept) };
      const free = kept.asked.sheets !== undefined;
      const where = { card: card.number, layer, free };
      return { choices: (await edges.desk.choices(planned, where)).map(choiceOnWire) };
    },
  );
}

function choiceOnWire({ choice, forbiddenBy, ...told }: LayerChoice): Wire.LayerChoice {
  return { ...choice, ...told, forbiddenBy: forbiddenBy.map((pin) => ({ ...pin })) };
}
