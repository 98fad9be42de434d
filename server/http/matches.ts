import { z } from 'zod';
import * as Wire from '../contract/supplies.ts';
import type { Records } from '../store/records.ts';
import type { SideRow, SupplyRow } from '../store/rows.ts';
import { matchOf } from '../supplies/match-of.ts';
import { answers } from './answers.ts';
import { CAUTION } from './caution.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';
import { isInPalettes } from './is-in-palettes.ts';
import { namedSides } from './named-sides.ts';
import { photosOf, picturesAsOne } from './one-picture.ts';
import { colourOnWire } from './wire/colours.ts';

export function matchRoutes(app: Service, edges: Edges): void {
  const { read } = edges.store;

  app.post(
    '/api/matches',
    {
      schema: {
        summary:
          'Whether supplies match a colour of a side: one against one, or each against each.',
        body: z.union([Wire.MatchesRequest, Wire.MatchRequest]),
        response: answers({ 200: z.union([Wire.Matches, Wire.Match]) }),
      },
    },
    async (request) => {
      const { body } = request;
      if ('supplies' in body) return { matches: await matchesOf(read, body) };
      const { supply, side, colour } = body;
      const one = { supplies: [supply], sides: [side], colour };
      const [match] = await matchesOf(read, one, (noun) => noun);
      return match!;
    },
  );
}

async function matchesOf(
  read: Records,
  asked: z.infer<typeof Wire.MatchesRequest>,
  field = (noun: string, at: number): string => `${noun === 'side' ? 'sides' : 'supplies'}[${at}]`,
): Promise<Wire.Match[]> {
  const supplies = await Promise.all(
    asked.supplies.map(async (id, at) =>
      found(await read.supplies.at(id), 'supply', id, field('supply', at)),
    ),
  );
  const sides = await Promise.all(
    asked.sides.map(async (id, at) =>
      found(await read.sides.at(id), 'side', id, field('side', at)),
    ),
  );
  const { colour } = asked;
  isInPalettes(colour, sides);
  const named = await namedSides(read, sides);
  const one = picturesAsOne(await photosOf(read, [...supplies, ...sides]));
  return supplies.flatMap((supply) => named.map((side) => matchOnWire(one, supply, side, colour)));
}

function matchOnWire(
  one: (photo: string) => string,
  supply: SupplyRow,
  side: SideRow,
  colour?: number,
): Wire.Match {
  const { verdict, nearest, at, difference, uncertainty, direction, reason } = matchOf(
    supply.photo === null ? supply : { ...supply, photo: one(supply.photo) },
    { ...side, photo: one(side.photo) },
    colour,
  );
  return {
    supply: supply.id,
    side: side.id,
    verdict,
    nearest: { ...colourOnWire(nearest.lab), share: nearest.share },
    at: colourOnWire(at),
    difference,
    uncertainty,
    direction,
    reason,
    caution: CAUTION,
  };
}
