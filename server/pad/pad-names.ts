import { difference } from '../colour/difference.ts';
import type { CalledLab, Lab } from '../colour/lab.ts';
import { nameOf } from '../colour/names.ts';
import type { Side } from './pad.ts';

/**
 * Names that hold for a whole pad. One printed ink is read a little differently on every side, and near the
 * border of two names half of its sides would bear the one and half the other; so colours of a pad that look
 * alike share the name of their mean.
 *
 * Takes       the sides of a pad.
 * Gives       a colour with its name in this pad: that of the nearest of its colours, or its own where none
 *             is near.
 */
export function padNames(sides: readonly Pick<Side, 'palette'>[]): (lab: Lab) => Lab | CalledLab {
  const kinds = kindsOf(sides).map(({ mean }) => ({ mean, called: nameOf(mean).words }));
  return ({ l, a, b }) => {
    let [nearest, least] = [null as string | null, ALIKE];
    for (const { mean, called } of kinds) {
      const apart = difference({ l, a, b }, mean);
      if (apart < least) [nearest, least] = [called, apart];
    }
    return nearest === null ? { l, a, b } : { l, a, b, called: nearest };
  };
}

/** The sides with every colour named as its pad names it. */
export function withNames<One extends Pick<Side, 'palette'>>(
  sides: readonly One[],
  named: (lab: Lab) => Lab = padNames(sides),
): One[] {
  return sides.map((side) => ({
    ...side,
    palette: {
      ...side.palette,
      colours: side.palette.colours.map((colour) => ({ ...colour, lab: named(colour.lab) })),
    },
  }));
}

/** Readings of one ink lie closer than this in CIEDE2000, where the light was fair: measured on the sample photos. */
const ALIKE = 5;

interface Kind {
  readonly mean: Lab;
  readonly weight: number;
}

/** The largest colours found kinds, smaller ones join the nearest; each kind is known by its mean. */
function kindsOf(sides: readonly Pick<Side, 'palette'>[]): Kind[] {
  const colours = sides
    .flatMap(({ palette }) => palette.colours)
    .sort((p, q) => q.share - p.share || p.lab.l - q.lab.l);
  const kinds: Kind[] = [];
  for (const { lab, share } of colours) {
    const apart = kinds.map(({ mean }) => difference(lab, mean));
    const least = Math.min(ALIKE, ...apart);
    const at = apart.findIndex((one) => one === least);
    if (at < 0) kinds.push({ mean: lab, weight: share });
    else kinds[at] = joined(kinds[at]!, { mean: lab, weight: share });
  }
  return kinds;
}

function joined(p: Kind, q: Kind): Kind {
  const weight = p.weight + q.weight;
  const part = q.weight / weight;
  const mean = {
    l: p.mean.l + part * (q.mean.l - p.mean.l),
    a: p.mean.a + part * (q.mean.a - p.mean.a),
    b: p.mean.b + part * (q.mean.b - p.mean.b),
  };
  return { mean, weight };
}
