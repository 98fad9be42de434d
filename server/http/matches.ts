import * as Wire from '../contract/supplies.ts';
import type { SideRow, SupplyRow } from '../store/rows.ts';
import { matchOf } from '../supplies/match-of.ts';
import { answers } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
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
      const { supply, side } = request.body;
      return matchOnWire(
        found(await read.supplies.at(supply), 'supply', supply),
        found(await read.sides.at(side), 'side', side),
      );
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
      return {
        matches: supplies.flatMap((supply) => sides.map((side) => matchOnWire(supply, side))),
      };
    },
  );
}

function matchOnWire(supply: SupplyRow, side: SideRow): Wire.Match {
  const { verdict, nearest, difference, uncertainty, direction, reason } = matchOf(supply, side);
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
