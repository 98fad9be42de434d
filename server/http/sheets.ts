import { z } from 'zod';
import * as Wire from '../contract/pads.ts';
import { answers } from './answers.ts';
import { changeSheet } from './change-sheet.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { namedSides } from './named-sides.ts';
import { holdFresh, stateRevision } from './fresh.ts';
import { sideOnWire } from './wire/sides.ts';
import { rulerOf } from './wire/sizes.ts';
import type { SheetRow } from '../store/rows.ts';

const SheetPath = z.object({ sheet: z.string() });

export function sheetRoutes(app: Service, edges: Edges): void {
  const { store } = edges;

  app.get(
    '/api/sheets/:sheet',
    {
      schema: { summary: 'A sheet.', params: SheetPath, response: answers({ 200: Wire.Sheet }) },
    },
    async (request, reply) => {
      const { sheet: id } = request.params;
      const sheet = found(await store.read.sheets.at(id), 'sheet', id);
      stateRevision(reply, sheet.revision);
      return sheetOnWire(edges, sheet);
    },
  );

  app.patch(
    '/api/sheets/:sheet',
    {
      schema: {
        summary: 'Correct a sheet: its label, how many copies, which sides it has.',
        params: SheetPath,
        body: Wire.SheetPatch,
        response: answers({ 200: Wire.Sheet }),
      },
    },
    async (request, reply) => {
      const { sheet: id } = request.params;
      const sheet = await store.write(async (records) => {
        holdFresh(request, found(await records.sheets.at(id), 'sheet', id).revision);
        return changeSheet(records, id, request.body, edges.newId);
      });
      edges.changes.tell(sheet.pad);
      stateRevision(reply, sheet.revision);
      return sheetOnWire(edges, sheet);
    },
  );
}

async function sheetOnWire({ store }: Edges, sheet: SheetRow): Promise<Wire.Sheet> {
  const pad = found(await store.read.pads.at(sheet.pad), 'pad', sheet.pad);
  const side = async (id: string | null): Promise<Wire.Side | null> => {
    const row = id === null ? null : await store.read.sides.at(id);
    if (row === null) return null;
    const [named] = await namedSides(store.read, [row]);
    return sideOnWire(named!, rulerOf(pad.sheetSize));
  };
  const { id, label, copies, front, back, revision } = sheet;
  return { id, label, copies, front: await side(front), back: await side(back), revision };
}
