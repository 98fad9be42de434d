import * as Wire from '../contract/supplies.ts';
import type { PhotoRow, SideRow, SupplyRow } from '../store/rows.ts';
import { matchOf } from '../supplies/match-of.ts';
import { answers } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { inOnePicture, photosOf } from './one-picture.ts';
import { colourOnWire } from './wire/colours.ts';

/** Said beside every verdict. */
const CAUTION =
  'A photo is not a measurement: hold the two side by side in daylight before you cut.';

export function matchRoutes(app: Service, edges: Edges): void {
  const { read } = edges.store;

  app.post(
    '/api/matches',
    {
      schema: {
        summary: 'Whether a cardstock or an ink matches a colour of a side.',
        body: Wire.MatchRequest,
        response: answers({ 200: Wire.Match }),
      },
    },
    async (request) => {
      const { supply: supplyId, side: sideId } = request.body;
      const supply = found(await read.supplies.at(supplyId), 'supply', supplyId);
      const side = found(await read.sides.at(sideId), 'side', sideId);
      return matchOnWire(await photosOf(read, [supply, side]), supply, side);
    },
  );

  app.post(
    '/api/matches/batch',
    {
      schema: {
        summary: 'Each of some supplies against each of some sides.',
        body: Wire.MatchesRequest,
        response: answers({ 200: Wire.Matches }),
      },
    },
    async (request) => {
      const supplies = await Promise.all(
        request.body.supplies.map(async (id, at) =>
          found(await read.supplies.at(id), 'supply', id, `supplies[${at}]`),
        ),
      );
      const sides = await Promise.all(
        request.body.sides.map(async (id, at) =>
          found(await read.sides.at(id), 'side', id, `sides[${at}]`),
        ),
      );
      const photos = await photosOf(read, [...supplies, ...sides]);
      return {
        matches: supplies.flatMap((supply) =>
          sides.map((side) => matchOnWire(photos, supply, side)),
        ),
      };
    },
  );
}

function matchOnWire(
  photos: ReadonlyMap<string, PhotoRow>,
  supply: SupplyRow,
  side: SideRow,
): Wire.Match {
  const together = inOnePicture(photos, supply, side);
  const { verdict, nearest, difference, uncertainty, direction, reason } = matchOf(
    together ? { ...supply, photo: side.photo } : supply,
    side,
  );
  return {
    supply: supply.id,
    side: side.id,
    verdict,
    nearest: { ...colourOnWire(nearest.lab), share: nearest.share },
    difference,
    uncertainty,
    direction,
    reason,
    caution: CAUTION,
  };
}
