import * as Wire from '../contract/supplies.ts';
import { expected } from '../refusals/refusal.ts';
import type { Records } from '../store/records.ts';
import type { SupplyRow } from '../store/rows.ts';
import { listedInto } from '../supplies/listed-into.ts';
import { suppliesFromCsv, suppliesToCsv } from '../supplies/supplies-csv.ts';
import type { ListedSupply } from '../supplies/supplies-csv.ts';
import { TYPED_COLOUR } from '../supplies/supply.ts';
import { answers, fileAnswer } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { LABOUR } from './security.ts';
import { supplyOnWire } from './wire/supplies.ts';

const CSV = 'text/csv';

/** Her supplies as a plain list for any spreadsheet (RFC 4180), and back. */
export function supplyListRoutes(app: Service, edges: Edges): void {
  const { store } = edges;
  app.addContentTypeParser(CSV, { parseAs: 'string' }, (_request, text, done) => done(null, text));

  app.get(
    '/api/supplies.csv',
    {
      schema: {
        summary: 'All her supplies as comma-separated text: kind, name, L, a, b, sheets.',
        response: answers({ 200: fileAnswer(CSV, 'Comma-separated text (RFC 4180).') }),
      },
    },
    async (_request, reply) => {
      const supplies = await store.read.supplies.all();
      return reply
        .type(`${CSV}; charset=utf-8; header=present`)
        .header('content-disposition', 'attachment; filename="supplies.csv"')
        .serializer((sent: string) => sent)
        .send(suppliesToCsv(supplies));
    },
  );

  app.post(
    '/api/supplies.csv',
    {
      config: {
        ...LABOUR,
        file: {
          type: CSV,
          description:
            'Comma-separated text (RFC 4180) with the columns kind, name, L, a, b, sheets.',
          example: 'kind,name,L,a,b,sheets\r\ncardstock,Slate,40,0,-5,12\r\n',
        },
      },
      schema: {
        summary: 'Bring supplies as comma-separated text; all lines are taken, or none.',
        consumes: [CSV],
        response: answers({ 200: Wire.Listed }),
      },
    },
    async (request) => {
      const { body } = request;
      if (typeof body !== 'string')
        throw expected(
          `comma-separated text (${CSV})`,
          'file',
          request.headers['content-type'] ?? 'nothing',
          'Save the list as CSV, with the columns kind,name,L,a,b,sheets, and send that.',
        );
      const list = suppliesFromCsv(body);
      return store.write((records) => takeList(edges, records, list));
    },
  );
}

/** All in one transaction: a list is taken whole or not at all. */
async function takeList(
  { newId, now }: Edges,
  records: Records,
  list: readonly ListedSupply[],
): Promise<Wire.Listed> {
  const { added, changed, same } = listedInto(await records.supplies.all(), list, typed);
  for (const supply of changed) await records.supplies.put(supply);
  for (const listed of added)
    await records.supplies.add({
      ...listed,
      id: newId(),
      uncertainty: TYPED_COLOUR,
      photo: null,
      corners: null,
      demo: false,
      createdAt: now(),
      revision: 1,
    });
  return {
    added: added.length,
    changed: changed.length,
    same,
    supplies: (await records.supplies.all()).map(supplyOnWire),
  };
}

function typed(supply: SupplyRow, { lab }: ListedSupply): SupplyRow {
  const colour = { lab, uncertainty: TYPED_COLOUR, glossy: false };
  return { ...supply, ...colour, photo: null, corners: null };
}
