import { z } from 'zod';
import * as Wire from '../contract/leftovers.ts';
import { fromStock } from '../cutting/from-stock.ts';
import { worthKeeping } from '../cutting/leftovers.ts';
import type { FromPart } from '../guide/ask.ts';
import type { Size } from '../lengths/length.ts';
import { expected } from '../refusals/refusal.ts';
import type { Records } from '../store/records.ts';
import type { LeftoverRow } from '../store/rows.ts';
import { NOTHING, answers } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { named, plansOfWork, withOwnParts } from './first-of-work.ts';
import { found } from './found.ts';
import { planAt } from './make-plan.ts';
import type { KeptPlan } from './make-plan.ts';
import { keyOf, makeOnce } from './once.ts';
import { sizeFromWire, sizeOnWire } from './wire/sizes.ts';

const PadPath = z.object({ pad: z.string() });

/** What is left of the sheets of a pad, kept as stock for the next batch. */
export function leftoverRoutes(app: Service, edges: Edges): void {
  const { store } = edges;

  app.get(
    '/api/pads/:pad/leftovers',
    {
      config: { phone: true },
      schema: {
        summary: 'Parts of sheets that were kept, the largest first.',
        params: PadPath,
        querystring: z.object({
          plan: z.string().optional().describe('Also say which of its pieces come out of them.'),
        }),
        response: answers({ 200: Wire.LeftoverList }),
      },
    },
    async (request) => {
      const pad = found(await store.read.pads.at(request.params.pad), 'pad', request.params.pad);
      const rows = await store.read.leftovers.ofPad(pad.id);
      const { plan } = request.query;
      if (plan === undefined) return { leftovers: rows.map(onWire), pieces: [], spared: [] };
      const kept = await planOfPad(edges, plan, pad.id);
      const parts = await withOwnParts(edges, kept, rows);
      return { leftovers: parts.map(onWire), ...usesOf(kept, parts) };
    },
  );

  app.post(
    '/api/pads/:pad/leftovers',
    {
      schema: {
        summary: 'Keep what a plan leaves of its sheets, or one part that she has measured.',
        params: PadPath,
        body: Wire.NewLeftovers,
        response: answers({ 201: Wire.LeftoverList }),
      },
    },
    async (request, reply) => {
      const { body } = request;
      const pad = found(await store.read.pads.at(request.params.pad), 'pad', request.params.pad);
      const plan = 'plan' in body ? await planOfPad(edges, body.plan, pad.id) : null;
      const before = await store.read.leftovers.ofPad(pad.id);
      const own = plan === null ? new Set<string>() : await plansOfWork(edges, plan, before);
      const measured = 'plan' in body ? null : sizeFromWire(body.size, 'size');
      await store.write((records) =>
        makeOnce(records, keyOf(request, body), edges.now(), async () => {
          const rowsNow = await records.leftovers.ofPad(pad.id);
          const kept = plan === null ? [] : named(plan, own, rowsNow);
          const parts =
            plan === null
              ? [await partOf(records, pad.id, (body as { sheet: string }).sheet, measured!)]
              : partsOf(plan, kept);
          const rows = parts.map((part): LeftoverRow => ({
            ...part,
            id: edges.newId(),
            pad: pad.id,
            plan: plan?.id ?? null,
            createdAt: edges.now(),
          }));
          if (plan !== null) await takeOutUsed(records, plan, kept);
          for (const row of rows) await records.leftovers.add(row);
          return rows.map(({ id }) => id);
        }),
      );
      edges.changes.tell(pad.id);
      const rows = await store.read.leftovers.ofPad(pad.id);
      return reply.code(201).send({ leftovers: rows.map(onWire), pieces: [], spared: [] });
    },
  );

  app.delete(
    '/api/pads/:pad/leftovers/:leftover',
    {
      schema: {
        summary: 'Take a part out of the stock: it is used up or lost.',
        params: PadPath.extend({ leftover: z.string() }),
        response: answers({ 204: NOTHING }),
      },
    },
    async (request, reply) => {
      const { pad, leftover: id } = request.params;
      await store.write(async (records) => {
        const row = await records.leftovers.at(id);
        found(row?.pad === pad ? row : null, 'leftover', id);
        await records.leftovers.remove(id);
      });
      edges.changes.tell(pad);
      return reply.code(204).send();
    },
  );
}

type Part = Pick<LeftoverRow, 'sheet' | 'label' | 'size'>;

async function planOfPad(edges: Edges, id: string, pad: string): Promise<KeptPlan> {
  const plan = await planAt(edges, id);
  return found(plan.pad.id === pad ? plan : null, 'plan', id);
}

function partsOf({ id, pad, batch }: KeptPlan, kept: readonly LeftoverRow[]): Part[] {
  if (kept.some(({ plan }) => plan === id))
    throw expected(
      'a plan whose left-overs are not kept yet',
      'plan',
      id,
      'They are in the stock already; delete the ones that you have used.',
      'clash',
    );
  // A sheet that stayed whole leaves nothing.
  const { spared } = usesOf({ id, batch }, kept);
  const opened = batch.scheme.slots.filter((slot) => !spared.includes(slot.id));
  return opened.flatMap((slot) => {
    const { id: sheet, label } = pad.sheets.find((one) => one.id === batch.plan.slots[slot.id])!;
    return worthKeeping(slot).map((size) => ({ sheet, label, size }));
  });
}

/** Parts of which whole sheets' pieces were cut are used up. */
async function takeOutUsed(
  { leftovers }: Records,
  plan: KeptPlan,
  kept: readonly LeftoverRow[],
): Promise<void> {
  const { pieces, spared } = usesOf(plan, kept);
  const used = pieces.filter(({ slot }) => spared.includes(slot));
  for (const part of new Set(used.map(({ leftover }) => leftover))) await leftovers.remove(part);
}

async function partOf(
  { sheets, pads, leftovers }: Records,
  pad: string,
  id: string,
  size: Size,
): Promise<Part> {
  const row = await sheets.at(id);
  const sheet = found(row?.pad === pad ? row : null, 'sheet', id);
  const whole = (await pads.at(pad))!.sheetSize;
  if (size.width > whole.width || size.height > whole.height)
    throw expected(
      'a part no larger than its sheet',
      'size',
      sizeOnWire(size),
      `A sheet of this pad measures ${Object.values(sizeOnWire(whole)).join(' x ')}.`,
      'does-not-fit',
    );
  const kept = (await leftovers.ofPad(pad)).filter((part) => part.sheet === sheet.id);
  const sum = [...kept, { size }].reduce((total, part) => total + areaOf(part.size), 0);
  if (sum > sheet.copies * areaOf(whole))
    throw expected(
      `parts of ${sheet.label} that are together no larger than ${sheet.copies === 1 ? 'the one sheet of it' : `the ${sheet.copies} sheets of it`} in the pad`,
      'size',
      sizeOnWire(size),
      'Take out parts that are used up, or correct how many copies of the sheet the pad has.',
      'does-not-fit',
    );
  return { sheet: sheet.id, label: sheet.label, size };
}

function areaOf({ width, height }: Size): number {
  return width * height;
}

/** The pieces of sheets that a plan need not open, for its guide. */
export function fromPartsOf(plan: KeptPlan, rows: readonly LeftoverRow[]): FromPart[] {
  const { pieces, spared } = usesOf(plan, rows);
  return pieces
    .filter(({ slot }) => spared.includes(slot))
    .map(({ leftover, slot, card, layer }) => {
      const placed = plan.batch.scheme.slots.find(({ id }) => id === slot)!.pieces;
      const { piece } = placed.find((one) => one.piece.card === card && one.piece.layer === layer)!;
      return { slot, piece: piece.id, size: rows.find(({ id }) => id === leftover)!.size };
    });
}

/** What of a plan comes out of kept parts; not out of those that it leaves itself. */
function usesOf(
  { id: plan, batch }: Pick<KeptPlan, 'id' | 'batch'>,
  rows: readonly LeftoverRow[],
): Pick<Wire.LeftoverList, 'pieces' | 'spared'> {
  const { slots } = batch.scheme;
  const taken = fromStock(
    slots.map(({ id, pieces }) => ({ id, pieces, sheet: batch.plan.slots[id]! })),
    rows.filter((row) => row.plan !== plan),
  );
  const pieces = taken.map(({ part, slot, placed }) => ({
    leftover: part,
    slot,
    card: placed.piece.card,
    layer: placed.piece.layer,
  }));
  const spared = slots
    .filter(({ id, pieces: all }) => all.length === taken.filter(({ slot }) => slot === id).length)
    .map(({ id }) => id);
  return { pieces, spared };
}

function onWire({ size, ...row }: LeftoverRow): Wire.Leftover {
  return { ...row, size: sizeOnWire(size) };
}
