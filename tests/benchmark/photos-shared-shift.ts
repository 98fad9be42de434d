/** What of the errors of a picture is one shift that all of its colours share, as a wrong white makes it. */
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { labFromLinear, linearFromLab } from '../../server/colour/spaces.ts';
import type { ColourError } from './photos-figures.ts';

/**
 * How far off the colours are once, picture by picture, the three gains of linear light are taken out by which they are
 * off together. What is left is what a known white could not mend: unevenness, mixed borders, bent tones.
 *
 * Takes       colours that were read; a picture with fewer than six of them says nothing.
 * Gives       CIEDE2000, one a colour.
 */
export function withoutSharedShift(errors: readonly ColourError[]): number[] {
  const pictures = new Map<string, ColourError[]>();
  for (const error of errors) {
    const own = pictures.get(error.picture);
    if (own === undefined) pictures.set(error.picture, [error]);
    else own.push(error);
  }
  return [...pictures.values()]
    .filter((own) => own.length >= 6)
    .flatMap((own) => {
      const gains = [0, 1, 2].map((k) => sharedGain(own, k));
      return own.map(({ read, truth }) => {
        const [r, g, b] = lightOf(read).map((light, k) => light / gains[k]!);
        return difference(labFromLinear({ r: r!, g: g!, b: b! }), truth);
      });
    });
}

/** Mean of the logarithms, dark colours by as much less as their light is less sure. */
function sharedGain(errors: readonly ColourError[], channel: number): number {
  let [sum, all] = [0, 0];
  for (const { read, truth } of errors) {
    const [seen, real] = [lightOf(read)[channel]!, lightOf(truth)[channel]!];
    const weight = Math.min(1, real / SURE);
    sum += weight * Math.log(seen / real);
    all += weight;
  }
  return Math.exp(sum / Math.max(1e-9, all));
}

/** Linear light from which on a colour counts in full. */
const SURE = 0.2;

function lightOf(lab: Lab): readonly number[] {
  const { r, g, b } = linearFromLab(lab);
  return [r, g, b].map((light) => Math.max(1e-3, light));
}
