import { z } from 'zod';
import * as Wire from '../contract/pads.ts';
import { expected } from '../refusals/refusal.ts';
import { MILLIMETRE } from '../lengths/length.ts';
import type { Size } from '../lengths/length.ts';
import { NOTHING, answers } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { holdFresh, stateRevision } from './fresh.ts';
import { keyOf, makeOnce } from './once.ts';
import { createPadReader, rowsOfPad } from './read-pad.ts';
import { padSummary, sheetsToPlan } from './wire/pads.ts';
import { sizeFromWire } from './wire/sizes.ts';

const PadPath = z.object({ pad: z.string() });

export function padRoutes(app: Service, edges: Edges): void {
  const { store, changes } = edges;
  const { clerk } = edges.desk;
  const pads = createPadReader(clerk);

  app.post(
    '/api/pads',
    {
      schema: { summary: 'Start a pad.', body: Wire.NewPad, response: answers({ 201: Wire.Pad }) },
    },
    async (request, reply) => {
      const { name, sheetSize: asked } = request.body;
      const sheetSize = paperSize(sizeFromWire(asked, 'sheetSize'), asked);
      const question = keyOf(request, request.body);
      const [id] = await store.write((records) =>
        makeOnce(records, question, edges.now(), async () => {
          const pad = { id: edges.newId(), name, sheetSize, createdAt: edges.now(), revision: 1 };
          await records.pads.add(pad);
          return [pad.id];
        }),
      );
      const pad = await pads.read(store.read, id!);
      stateRevision(reply, pad.revision);
      return reply.code(201).header('location', `/api/pads/${pad.id}`).send(pad);
    },
  );

  app.get(
    '/api/pads',
    {
      config: { phone: true },
      schema: { summary: 'All pads.', response: answers({ 200: Wire.PadList }) },
    },
    async () => {
      const counts = await store.read.pads.sheetCounts();
      const all = await store.read.pads.all();
      return { pads: all.map((pad) => padSummary(pad, counts.get(pad.id) ?? 0)) };
    },
  );

  app.get(
    '/api/pads/:pad',
    {
      config: { phone: true },
      schema: {
        summary: 'A pad with its photos, sheets and colour story.',
        params: PadPath,
        response: answers({ 200: Wire.Pad }),
      },
    },
    async (request, reply) => {
      const pad = await pads.read(store.read, request.params.pad);
      stateRevision(reply, pad.revision);
      return reply.send(pad);
    },
  );

  app.patch(
    '/api/pads/:pad',
    {
      schema: {
        summary: 'Rename a pad.',
        params: PadPath,
        body: Wire.PadPatch,
        response: answers({ 200: Wire.Pad }),
      },
    },
    async (request, reply) => {
      const { pad: id } = request.params;
      await store.write(async (records) => {
        holdFresh(request, found(await records.pads.at(id), 'pad', id).revision);
        await records.pads.rename(id, request.body.name);
      });
      changes.tell(id);
      const pad = await pads.read(store.read, id);
      stateRevision(reply, pad.revision);
      return reply.send(pad);
    },
  );

  app.delete(
    '/api/pads/:pad',
    {
      schema: {
        summary: 'Delete a pad with its photos and plans.',
        params: PadPath,
        response: answers({ 204: NOTHING }),
      },
    },
    async (request, reply) => {
      const { pad: id } = request.params;
      const waited = await store.write(async (records) => {
        holdFresh(request, found(await records.pads.at(id), 'pad', id).revision);
        const uploads = await records.uploads.ofPad(id);
        await records.pads.remove(id);
        return uploads;
      });
      // One that its sender waits for is let go by who reads it.
      for (const { file, acknowledged } of waited)
        if (acknowledged) await store.files.letGo(file).catch(() => undefined);
      changes.tell(id);
      return reply.code(204).send();
    },
  );

  app.get(
    '/api/pads/:pad/coordination',
    {
      config: { phone: true },
      schema: {
        summary:
          'What goes with a side, the best first; without a side, the best pairs of the pad.',
        params: PadPath,
        querystring: z.object({ side: z.string().optional() }),
        response: answers({ 200: Wire.Coordination }),
      },
    },
    async (request) => {
      const rows = await rowsOfPad(store.read, request.params.pad);
      const sides = sheetsToPlan(rows)
        .flatMap(({ front, back }) => [front, back])
        .filter((side) => side !== null);
      const { side: id } = request.query;
      if (id === undefined)
        return {
          pairs: (await clerk.pairs(sides, MOST_PAIRS)).map(({ words, ...pair }) => ({
            ...pair,
            why: inOneLine(words),
          })),
        };
      const side = found(sides.find((each) => each.id === id) ?? null, 'side', id);
      const others = sides.filter((other) => other.id !== id);
      const companions = await clerk.companions(side, others);
      return {
        companions: companions.map(({ words, ...one }) => ({ ...one, why: inOneLine(words) })),
      };
    },
  );
}

const MOST_PAIRS = 200;

function inOneLine(words: readonly string[]): string {
  return words.join(' ');
}

/** No patterned paper is sold smaller or larger than this (common practice, no source). */
function paperSize(size: Size, asked: unknown): Size {
  const [short, long] = [Math.min(size.width, size.height), Math.max(size.width, size.height)];
  if (short < 40 * MILLIMETRE || long > 620 * MILLIMETRE)
    throw expected(
      'a sheet between 40 mm and 620 mm a side',
      'sheetSize',
      asked,
      'Measure a sheet of the pad; many are 6 x 6 in.',
      'does-not-fit',
    );
  return size;
}
