import { polygonArea } from '../geometry/polygon.ts';
import { isConvex, sidesOf } from '../geometry/quad.ts';
import { aspectOf } from './find-sheets.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import { quadOf } from './region-quad.ts';
import { regionsOf } from './regions.ts';
import { seenEdges } from './seen-edges.ts';
import { withoutThin } from './spread.ts';
import { shrunken } from './white-card.ts';

/**
 * Plain four-cornered pieces on the table, each told by its own even colour: also those that lie so close together, or
 * on one card, that all of them look like one thing.
 *
 *     +-----------------+
 *     | +---+ +---+     |     within a square nothing changes; around it runs an edge, and the shadow
 *     | |   | |   |     |     in the gap to the next one; what is left of the card is no four-cornered piece
 *     | +---+ +---+     |
 *     +-----------------+
 *
 * Gives       rough quads, to be laid onto the edges; a card that lies free is one of them too.
 * Good up to  squares of cardstock: of a printed sheet only its plain parts are pieces.
 */
export function plainPieces(overview: Overview): Candidate[] {
  const { width, height } = overview.image;
  const { steep } = seenEdges(overview);
  const of = overview.things.of.slice();
  for (let pixel = 0; pixel < of.length; pixel++) if (steep[pixel]! > 0) of[pixel] = 0;
  const longest = Math.max(width, height);
  const flat = withoutThin({ width, height, of }, Math.max(1, Math.round(longest / LEAK)));
  return regionsOf(flat, LEAST_PIECE * width * height).flatMap((region): Candidate[] => {
    const quad = quadOf(region, width);
    if (quad === null || quad.fill < WHOLE || !isConvex(quad.corners)) return [];
    if (aspectOf(quad.corners) > LONG) return [];
    // Where it gets steep the edge begins; the piece ends in its middle.
    const side = sidesOf(quad.corners).reduce((sum, length) => sum + length, 0) / 4;
    const corners = shrunken(quad.corners, -EDGE / side);
    return [{ corners, fill: quad.fill, area: polygonArea(corners) }];
  });
}

/** Where an edge is faint over a stretch of the picture's long side over this, no piece leaks out. */
const LEAK = 300;
/** Part of the picture that a piece covers at least. */
const LEAST_PIECE = 0.0015;
/** Part of its quad that a piece fills; the card between squares fills much less. */
const WHOLE = 0.93;
/** Length over width of a square at most: a gap between squares is longer. */
const LONG = 3;
/** Pixels from where an edge begins to its middle. */
const EDGE = 1.5;
