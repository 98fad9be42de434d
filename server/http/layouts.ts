import { z } from 'zod';
import * as Wire from '../contract/layouts.ts';
import { envelopeSaid, foldSaid } from '../guide/fold-words.ts';
import { layoutDrawing } from '../guide/layout-drawing.ts';
import { layoutNotes } from '../guide/layout-notes.ts';
import { borders } from '../layouts/borders.ts';
import { catalogue } from '../layouts/catalogue.ts';
import { checkLayout } from '../layouts/check-layout.ts';
import type { Layout } from '../layouts/layout.ts';
import { papersOf } from '../layouts/papers-of.ts';
import { visibleLayers } from '../layouts/visible-layers.ts';
import { expected } from '../refusals/refusal.ts';
import { NOTHING, answers } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { keyOf, makeOnce } from './once.ts';
import { layoutFromWire, layoutOnWire } from './wire/layouts.ts';
import { measured, rulerOf } from './wire/sizes.ts';

export function layoutRoutes(app: Service, edges: Edges): void {
  const { store } = edges;
  const ours = catalogue.map((layout) => listing(layout, 'catalogue'));

  app.get(
    '/api/layouts',
    {
      schema: { summary: 'Our layouts and her own.', response: answers({ 200: Wire.LayoutList }) },
    },
    async () => {
      const hers = await store.read.layouts.all();
      return { layouts: [...ours, ...hers.map(({ layout }) => listing(layout, 'hers'))] };
    },
  );

  app.post(
    '/api/layouts',
    {
      schema: {
        summary: 'Add a layout of her own.',
        body: Wire.NewLayout,
        response: answers({ 201: Wire.LayoutListing }),
      },
    },
    async (request, reply) => {
      const layout = layoutFromWire({ ...request.body, id: request.body.id ?? edges.newId() });
      checkLayout(layout);
      const question = keyOf(request, request.body);
      const [id] = await store.write((records) =>
        makeOnce(records, question, edges.now(), async () => {
          const taken =
            catalogue.some((each) => each.id === layout.id) ||
            (await records.layouts.isTaken(layout.id));
          if (taken) throw idTaken(layout.id);
          await records.layouts.add({ layout, createdAt: edges.now() });
          return [layout.id];
        }),
      );
      const kept = found(await store.read.layouts.at(id!), 'layout', id!);
      return reply.code(201).send(listing(kept.layout, 'hers'));
    },
  );

  app.post(
    '/api/layouts/check',
    {
      schema: {
        summary: 'Check a layout without keeping it: what is seen of it, or why it cannot be made.',
        body: Wire.NewLayout,
        response: answers({ 200: Wire.CheckedLayout }),
      },
    },
    (request, reply) => {
      const layout = layoutFromWire({ ...request.body, id: request.body.id ?? 'unkept' });
      checkLayout(layout);
      void reply.send(checked(layout));
    },
  );

  app.put(
    '/api/layouts/:layout',
    {
      schema: {
        summary: 'Change a layout of her own; plans made with it stay as they are.',
        params: z.object({ layout: z.string() }),
        body: Wire.NewLayout,
        response: answers({ 200: Wire.LayoutListing }),
      },
    },
    async (request) => {
      const { layout: id } = request.params;
      const layout = layoutFromWire({ ...request.body, id });
      checkLayout(layout);
      await store.write(async (records) => {
        found(await records.layouts.at(id), 'layout of your own', id, 'layout');
        await records.layouts.replace(layout);
      });
      return listing(layout, 'hers');
    },
  );

  app.delete(
    '/api/layouts/:layout',
    {
      schema: {
        summary: 'Delete a layout of her own; plans made with it stay.',
        params: z.object({ layout: z.string() }),
        response: answers({ 204: NOTHING }),
      },
    },
    async (request, reply) => {
      const { layout: id } = request.params;
      await store.write(async (records) => {
        found(await records.layouts.at(id), 'layout of your own', id, 'layout');
        await records.layouts.remove(id);
      });
      return reply.code(204).send();
    },
  );
}

/** A layout of the catalogue or of her own. */
export async function layoutAt({ store }: Edges, id: string, field: string): Promise<Layout> {
  const ours = catalogue.find((layout) => layout.id === id);
  if (ours !== undefined) return ours;
  return found(await store.read.layouts.at(id), 'layout', id, field).layout;
}

function listing(layout: Layout, origin: 'catalogue' | 'hers'): Wire.LayoutListing {
  return {
    ...layoutOnWire(layout),
    origin,
    papers: papersOf(layout).length,
    drawing: layoutDrawing(layout),
  };
}

function checked(layout: Layout): Wire.CheckedLayout {
  const ruler = rulerOf(layout.card);
  return {
    papers: papersOf(layout).length,
    drawing: layoutDrawing(layout),
    layers: visibleLayers(layout).map(({ layer, share }) => ({ layer, share })),
    borders: borders(layout).map(({ a, b, length }) => ({
      a,
      b,
      length: measured(length, ruler),
    })),
    fold: foldSaid(layout, ruler),
    envelope: envelopeSaid(layout),
    notes: layoutNotes(layout, ruler),
  };
}

function idTaken(id: string): Error {
  return expected(
    'an id that no layout has',
    'id',
    id,
    'Leave the id out, or choose another.',
    'clash',
  );
}
