import { z } from 'zod';
import * as Wire from '../contract/uploads.ts';
import type { Problem } from '../contract/values.ts';
import type { UploadRow } from '../store/uploads.ts';
import { NOTHING, answers } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';

const UploadPath = z.object({ upload: z.string() });

/** Photos that were taken in to be read later (`Prefer: respond-async`), and what has come of them. */
export function uploadRoutes(app: Service, { store }: Edges): void {
  app.get(
    '/api/pads/:pad/uploads',
    {
      config: { phone: true },
      schema: {
        summary: 'Photos that were taken in to be read later, and what has come of each.',
        params: z.object({ pad: z.string() }),
        response: answers({ 200: Wire.UploadList }),
      },
    },
    async (request) => {
      const { pad } = request.params;
      found(await store.read.pads.at(pad), 'pad', pad);
      const rows = await store.read.uploads.ofPad(pad);
      return { uploads: rows.filter((row) => row.acknowledged).map(uploadOnWire) };
    },
  );

  app.get(
    '/api/uploads/:upload',
    {
      config: { phone: true },
      schema: {
        summary: 'What has come of a photo that was taken in to be read later.',
        params: UploadPath,
        response: answers({ 200: Wire.Upload }),
      },
    },
    async (request) => {
      const { upload: id } = request.params;
      return uploadOnWire(found(await store.read.uploads.at(id), 'upload', id));
    },
  );

  app.delete(
    '/api/uploads/:upload',
    {
      schema: {
        summary: 'Forget a photo that waits or was refused; one that was read stays with its pad.',
        params: UploadPath,
        response: answers({ 204: NOTHING }),
      },
    },
    async (request, reply) => {
      const { upload: id } = request.params;
      const { file } = await store.write(async ({ uploads }) => {
        const upload = found(await uploads.at(id), 'upload', id);
        await uploads.remove(id);
        return upload;
      });
      // It is forgotten, whatever becomes of the file.
      await store.files.letGo(file).catch(() => undefined);
      return reply.code(204).send();
    },
  );
}

export function uploadOnWire(row: UploadRow): Wire.Upload {
  const { id, pad, face: side, arrangement, createdAt, photo } = row;
  const problem = row.problem === null ? null : (JSON.parse(row.problem) as Problem);
  const state = photo !== null ? 'read' : problem !== null ? 'refused' : 'waiting';
  return { id, pad, side, arrangement, createdAt, state, photo, problem };
}
