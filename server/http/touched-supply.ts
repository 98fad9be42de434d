import { z } from 'zod';
import * as Wire from '../contract/supplies.ts';
import type { PhotoPoint } from '../geometry/points.ts';
import type { ReadSupply } from '../from-photo-to-guide.ts';
import { Refusal, expected } from '../refusals/refusal.ts';
import type { PhotoRow } from '../store/rows.ts';
import { answers } from './answers.ts';
import { asBefore } from './as-before.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { keyOf, madeBefore, makeOnce } from './once.ts';
import { LABOUR } from './security.ts';
import { suppliesAt } from './take-supplies.ts';
import { supplyOnWire } from './wire/supplies.ts';

/** A supply by one touch in any photo: it keeps the photo, so that it compares finely with what lies beside it. */
export function touchedSupplyRoutes(app: Service, edges: Edges): void {
  const { store } = edges;

  app.post(
    '/api/photos/:photo/supplies',
    {
      config: LABOUR,
      schema: {
        summary: 'Add the plain colour that lies at a touched place of a photo.',
        params: z.object({ photo: z.string() }),
        body: Wire.TouchedSupply,
        response: answers({ 201: Wire.Supplies }),
      },
    },
    async (request, reply) => {
      const { photo: id } = request.params;
      const { kind, name, at, sheets = null } = request.body;
      const question = keyOf(request, [id, request.body]);
      const photo = found(await store.read.photos.at(id), 'photo', id);
      const before = await madeBefore(store.read, question);
      const ids = before ?? (await take());
      async function take(): Promise<readonly string[]> {
        const { lab, uncertainty, corners, glossy } = await underTouch(edges, photo, {
          x: at[0],
          y: at[1],
        });
        return store.write((records) =>
          makeOnce(records, question, edges.now(), async () => {
            found(await records.photos.at(id), 'photo', id);
            const supply = edges.newId();
            await records.supplies.add({
              id: supply,
              kind,
              name,
              lab,
              uncertainty,
              glossy,
              photo: id,
              corners,
              sheets,
              demo: false,
              createdAt: edges.now(),
              revision: 1,
            });
            return [supply];
          }),
        );
      }
      const supplies = await suppliesAt(edges, ids);
      return reply.code(201).send({ supplies: supplies.map(supplyOnWire), notes: [] });
    },
  );
}

/** Read as the photo itself was: with the white card and the scraps that were found or shown in it. */
async function underTouch(
  { store, desk }: Edges,
  photo: PhotoRow,
  at: PhotoPoint,
): Promise<ReadSupply> {
  const { width, height } = photo;
  if (!(at.x >= 0 && at.y >= 0 && at.x <= width && at.y <= height))
    throw expected(
      `a place in the photo, which is ${width} x ${height} pixels,`,
      'at',
      [at.x, at.y],
      'Touch the picture itself.',
      'does-not-fit',
    );
  // A photo of supplies keeps how its scraps look in the photos that it is tied to.
  const others =
    photo.pad === null
      ? [photo]
      : (await store.read.photos.ofPad(photo.pad)).filter(({ id }) => id !== photo.id);
  const read = await desk.readTouched({
    file: await store.files.readable('photos', photo.hash),
    at,
    look: photo.pad === null ? 'squares' : 'sheets',
    ...asBefore(photo, others),
  });
  if (read !== null) return read;
  throw new Refusal({
    kind: 'nothing-found',
    field: 'at',
    received: [at.x, at.y],
    message: 'Expected one plain colour where the photo was touched but found none',
    mend: 'Touch the middle of a square, a smear or a broad printed shape.',
  });
}
