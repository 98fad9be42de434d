import { z } from 'zod';
import * as Wire from '../contract/supplies.ts';
import { Refusal } from '../refusals/refusal.ts';
import { answers } from './answers.ts';
import { chipColoursOf } from './chip-colours.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { holdFresh, stateRevision } from './fresh.ts';
import { holdInPhoto, pointsOf } from './read-again.ts';
import { readSuppliesAgain } from './read-supplies-again.ts';
import type { Tie } from './read-supplies-again.ts';
import { LABOUR } from './security.ts';
import { spotFromWire } from './wire/corners.ts';
import { supplyOnWire } from './wire/supplies.ts';

/** The scraps of a pad's photos lie in a photo of supplies too: it is read again, tied to those by them. */
export function tieSuppliesRoutes(app: Service, edges: Edges): void {
  const { store } = edges;

  app.patch(
    '/api/photos/:photo/supplies',
    {
      config: LABOUR,
      schema: {
        summary:
          'Show where the scraps of a pad’s photos lie in a photo of supplies, or that none do; it is read again.',
        params: z.object({ photo: z.string() }),
        body: Wire.SuppliesTie,
        response: answers({ 200: Wire.Supplies }),
      },
    },
    async (request, reply) => {
      const { photo: id } = request.params;
      const photo = found(await store.read.photos.at(id), 'photo', id);
      if (photo.pad !== null) found(null, 'photo of supplies', id);
      const { pad, chips } = request.body;
      const spots = chips.map(spotFromWire);
      holdInPhoto(spots.flatMap(pointsOf), photo, 'chips');
      const tie = spots.length === 0 ? null : await tieTo(edges, pad ?? '', spots);
      const again = await readSuppliesAgain(edges, photo, tie, (revision) =>
        holdFresh(request, revision),
      );
      const now = found(await store.read.photos.at(id), 'photo', id);
      stateRevision(reply, now.revision);
      return {
        supplies: again.supplies.map(supplyOnWire),
        notes: [...now.notes, ...again.notes],
      };
    },
  );
}

async function tieTo({ store }: Edges, pad: string, spots: Tie['spots']): Promise<Tie> {
  found(await store.read.pads.at(pad), 'pad', pad, 'pad');
  const colours = chipColoursOf(await store.read.photos.ofPad(pad));
  if (colours.length === 0) throw noScraps(pad);
  return { pad, spots, colours };
}

function noScraps(pad: string): Refusal {
  return new Refusal({
    kind: 'does-not-fit',
    field: 'pad',
    received: pad,
    message:
      'Expected a pad with a photo that says how the scraps look, but none of its photos shows any',
    mend: 'Touch the scraps on a photo of the pad first, then here.',
  });
}
