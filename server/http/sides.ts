import { z } from 'zod';
import * as Wire from '../contract/pads.ts';
import { answers, fileAnswer } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { holdFresh, stateRevision } from './fresh.ts';
import { sendPicture } from './photos.ts';
import { readSideAgain } from './read-again.ts';
import { LABOUR } from './security.ts';
import { cornersFromWire } from './wire/corners.ts';
import { sideOnWire } from './wire/sides.ts';
import { rulerOf } from './wire/sizes.ts';

const SidePath = z.object({ side: z.string() });

export function sideRoutes(app: Service, edges: Edges): void {
  const { store } = edges;

  app.get(
    '/api/sides/:side',
    {
      config: { phone: true },
      schema: { summary: 'A side.', params: SidePath, response: answers({ 200: Wire.Side }) },
    },
    async (request, reply) => {
      const side = found(
        await store.read.sides.at(request.params.side),
        'side',
        request.params.side,
      );
      const pad = found(await store.read.pads.at(side.pad), 'pad', side.pad);
      stateRevision(reply, side.revision);
      return sideOnWire(side, rulerOf(pad.sheetSize));
    },
  );

  app.patch(
    '/api/sides/:side',
    {
      config: LABOUR,
      schema: {
        summary: 'Correct the corners of a side; its swatch is read again.',
        params: SidePath,
        body: Wire.SidePatch,
        response: answers({ 200: Wire.Side }),
      },
    },
    async (request, reply) => {
      const side = found(
        await store.read.sides.at(request.params.side),
        'side',
        request.params.side,
      );
      const corners = cornersFromWire(request.body.corners);
      const again = await readSideAgain(edges, side, corners, (revision) =>
        holdFresh(request, revision),
      );
      const pad = found(await store.read.pads.at(side.pad), 'pad', side.pad);
      stateRevision(reply, again.revision);
      return sideOnWire(again, rulerOf(pad.sheetSize));
    },
  );

  app.get(
    '/api/sides/:side/swatch',
    {
      config: { phone: true },
      schema: {
        summary: 'The flat, evenly lit picture of a side.',
        params: SidePath,
        response: answers({ 200: fileAnswer('image/jpeg', 'A JPEG.') }),
      },
    },
    async (request, reply) => {
      const side = found(
        await store.read.sides.at(request.params.side),
        'side',
        request.params.side,
      );
      return sendPicture(edges, reply, 'swatches', side.swatch);
    },
  );
}
