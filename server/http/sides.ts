import { z } from 'zod';
import * as Wire from '../contract/pads.ts';
import type { Records } from '../store/records.ts';
import { answers, fileAnswer } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { holdFresh, stateRevision } from './fresh.ts';
import { namedSides } from './named-sides.ts';
import { sendJpeg, sendPicture } from './photos.ts';
import { readSideAgain } from './read-again.ts';
import { sayUp } from './say-up.ts';
import { LABOUR } from './security.ts';
import { smallSwatches } from './small-swatches.ts';
import { cornersFromWire } from './wire/corners.ts';
import { sideOnWire } from './wire/sides.ts';
import { rulerOf } from './wire/sizes.ts';

const SidePath = z.object({ side: z.string() });
const WhichSwatch = z.object({
  of: z
    .string()
    .regex(/^[0-9a-f]{12}$/)
    .optional()
    .describe(
      'The content it was addressed by: a swatch that a plan was made with is still there.',
    ),
  width: z.coerce
    .number()
    .int()
    .min(16)
    .max(2400)
    .optional()
    .describe('Pixels. Left out: as it was read.'),
});

export function sideRoutes(app: Service, edges: Edges): void {
  const { store } = edges;
  const small = smallSwatches(store.files);

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
      const [named] = await namedSides(store.read, [side]);
      return sideOnWire(named!, rulerOf(pad.sheetSize));
    },
  );

  app.patch(
    '/api/sides/:side',
    {
      config: LABOUR,
      schema: {
        summary:
          'Correct a side: its corners, and its swatch is read again; or which way its print is up.',
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
      const { corners, up } = request.body;
      const hold = (revision: number): void => holdFresh(request, revision);
      let again = side;
      if (corners !== undefined)
        again = await readSideAgain(edges, side, cornersFromWire(corners), hold);
      if (up !== undefined)
        again = await sayUp(edges, side, up, corners === undefined ? hold : () => undefined);
      const pad = found(await store.read.pads.at(side.pad), 'pad', side.pad);
      stateRevision(reply, again.revision);
      const [named] = await namedSides(store.read, [again]);
      return sideOnWire(named!, rulerOf(pad.sheetSize));
    },
  );

  app.get(
    '/api/sides/:side/swatch',
    {
      config: { phone: true },
      schema: {
        summary: 'The flat, evenly lit picture of a side.',
        params: SidePath,
        querystring: WhichSwatch,
        response: answers({ 200: fileAnswer('image/jpeg', 'A JPEG.') }),
      },
    },
    async (request, reply) => {
      const { of, width } = request.query;
      const hash = await swatchOf(store.read, request.params.side, of);
      if (width === undefined) return sendPicture(edges, reply, 'swatches', hash);
      return sendJpeg(reply, await small(hash, width));
    },
  );
}

/** The swatch that the address means: as the side is read now, or as it was when a plan was made with it. */
async function swatchOf(records: Records, side: string, of?: string): Promise<string> {
  const now = (await records.sides.at(side))?.swatch ?? null;
  if (now !== null && (of === undefined || now.startsWith(of))) return now;
  const then = of === undefined ? null : await records.plans.swatchLike(of);
  return found(of === undefined ? now : then, 'side', side);
}
