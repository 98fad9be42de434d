import { z } from 'zod';
import * as Wire from '../contract/supplies.ts';
import type { Lab } from '../colour/lab.ts';
import type { PhotoOfSupplies } from '../from-photo-to-guide.ts';
import { contains } from '../geometry/polygon.ts';
import type { Quad } from '../geometry/points.ts';
import type { Spot } from '../photo/picture.ts';
import { middleOf } from '../photo/find-sheets.ts';
import { Refusal } from '../refusals/refusal.ts';
import type { Records } from '../store/records.ts';
import type { PhotoRow, SupplyRow } from '../store/rows.ts';
import { answers } from './answers.ts';
import { chipColoursOf } from './chip-colours.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { holdFresh, stateRevision } from './fresh.ts';
import { holdInPhoto, pointsOf } from './read-again.ts';
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
          'Show where the scraps of a pad’s photos lie in a photo of supplies; it is read again.',
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
      found(await store.read.pads.at(pad), 'pad', pad, 'pad');
      const spots = chips.map(spotFromWire);
      holdInPhoto(spots.flatMap(pointsOf), photo, 'chips');
      const colours = chipColoursOf(await store.read.photos.ofPad(pad));
      if (colours.length === 0) throw noScraps(pad);
      const hold = (revision: number): void => holdFresh(request, revision);
      const tie = { pad, spots, colours };
      const supplies = await readTied(edges, photo, tie, hold);
      const now = found(await store.read.photos.at(id), 'photo', id);
      stateRevision(reply, now.revision);
      return { supplies: supplies.map(supplyOnWire), notes: [...now.notes] };
    },
  );
}

interface Tie {
  readonly pad: string;
  readonly spots: readonly Spot[];
  readonly colours: readonly Lab[];
}

/** When another of its supplies is touched meanwhile, or one is taken away, all is read once more. */
async function readTied(
  edges: Edges,
  photo: PhotoRow,
  tie: Tie,
  hold: (revision: number) => void,
): Promise<readonly SupplyRow[]> {
  const { store, desk } = edges;
  hold(photo.revision);
  const before = await suppliesOf(store.read, photo);
  const own = before.filter(({ corners }) => !isScrap(corners, tie.spots));
  const { white } = photo;
  const reading = await desk.readSupplies({
    file: await store.files.readable('photos', photo.hash),
    tap: {
      ...(white.kind === 'tapped' && white.corners !== null ? { white: white.corners } : {}),
      chips: tie.spots,
      corners: own.map(({ corners }) => corners!),
    },
    chipColours: tie.colours,
  });
  if (reading.chips.tie !== 'tied') throw notTied(reading);
  const kept = await store.write(async (records) => {
    const now = found(await records.photos.at(photo.id), 'photo', photo.id);
    hold(now.revision);
    const there = await suppliesOf(records, photo);
    if (there.length !== before.length || there.some(({ id }, at) => id !== before[at]!.id))
      return null;
    const { chips, notes } = reading;
    await records.photos.put({ ...now, white: reading.white, chips, tiedTo: tie.pad, notes });
    for (const supply of there) {
      const at = own.findIndex(({ id }) => id === supply.id);
      if (at < 0) await records.supplies.remove(supply.id);
      else await records.supplies.put({ ...supply, ...reading.supplies[at]! });
    }
    return suppliesOf(records, photo);
  });
  return kept ?? readTied(edges, photo, tie, hold);
}

async function suppliesOf({ supplies }: Records, { id }: PhotoRow): Promise<SupplyRow[]> {
  return (await supplies.all()).filter(({ photo, corners }) => photo === id && corners !== null);
}

function isScrap(corners: Quad<'photo'> | null, spots: readonly Spot[]): boolean {
  return (
    corners !== null && spots.some((spot) => contains(corners, 'x' in spot ? spot : middleOf(spot)))
  );
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

function notTied({ notes }: PhotoOfSupplies): Refusal {
  return new Refusal({
    kind: 'does-not-fit',
    field: 'chips',
    received: notes.at(-1) ?? null,
    message:
      'Expected three scraps or more of the pad’s photos, two of them greys that differ well in lightness, but those touched do not look like them',
    mend: 'Touch the middle of each scrap, away from its edge: the same scraps that lie in the pad’s photos.',
  });
}
