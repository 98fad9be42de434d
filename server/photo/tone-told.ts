import type { Quad } from '../geometry/points.ts';
import { ofOneColour, placesOn, plainPlaces } from './ground-cells.ts';
import type { LightField } from './light.ts';
import type { Picture } from './picture.ts';
import { steepnessOf } from './steepness.ts';
import type { Steepness } from './steepness.ts';
import { bendAt } from './tone-curve.ts';

/** How strongly a photo's tones are bent; 1 as a phone bends them, 0 not at all. */
export interface ToneBend {
  readonly strength: number;
  /** Its standard error. */
  readonly error: number;
}

/**
 * Reads off the papers themselves whether whatever developed the photo bent its tones.
 *
 * The light that falls on a sheet falls on all of its colours alike. Where the file follows light, it changes over the
 * sheet by the same part in a light colour and in a dark one; where tones are bent, the dark one changes more. How much
 * more, over all sheets and channels, tells how strong the bend is, whatever the light is like, since a sheet that
 * lifts off the table or lies in a shadow does so with all of its colours. The table around a sheet counts as one colour
 * more, for as much as sheets lie as flat as it does.
 *
 * Takes       the preview, where the papers lie in it, and the light as far as it is known.
 * Gives       the bend; null where the light is too even, or the papers too plain, to tell.
 */
export function toneTold(
  picture: Picture,
  papers: readonly Quad<'photo'>[],
  light: LightField,
): ToneBend | null {
  return bendOf(
    papers.flatMap((corners) => {
      const places = placesOn(picture, corners, light.of, SIDE);
      const colours: (readonly number[])[] = [];
      const taken = new Uint8Array(SIDE * SIDE);
      let left = plainPlaces(places);
      while (colours.length < COLOURS) {
        const own = ofOneColour(places, left, REACH);
        if (own.length < FEWEST) break;
        colours.push(thinned(own));
        for (const place of own) taken[place] = 1;
        left = left.filter((place) => taken[place] === 0);
      }
      return colours.length === 0 ? [] : [0, 1, 2].map((k) => steepnessOf(places, colours, k));
    }),
  );
}

/** Places a side of a sheet; colours that are asked, and the least places of one. */
const SIDE = 128;
const COLOURS = 8;
const FEWEST = 80;
/** About so many places, evenly strewn, tell the steepness of a colour as well as more. */
const ENOUGH = 900;
/** How far a colour reaches from its middle, as a logarithm: by as much as bent tones may stray from the light. */
const REACH = 0.2;

function thinned(places: readonly number[]): readonly number[] {
  const step = Math.ceil(places.length / ENOUGH);
  return step === 1 ? places : places.filter((_, index) => index % step === 0);
}

/**
 * The strength of the bend by which the colours of each sheet differ in steepness; how steep light itself is there
 * stays open. One that strays counts for no more than three of its standard errors.
 */
export function bendOf(sheets: readonly (readonly Steepness[])[]): ToneBend | null {
  const told = sheets.filter((colours) => colours.length > 1);
  const open = told.reduce((sum, colours) => sum + colours.length - 1, 0);
  if (open < LEAST_TOLD) return null;
  let [strength, least] = [0, Infinity];
  for (let s = WEAKEST; s <= STRONGEST; s += STEP) {
    const cost = misfit(told, s);
    if (cost >= least) continue;
    least = cost;
    strength = s;
  }
  // As far as the misfit rises by that of one colour, as large as they are.
  const one = Math.max(1, least / open);
  let reach = STEP;
  while (
    reach < 2 &&
    Math.min(misfit(told, strength - reach), misfit(told, strength + reach)) < least + one
  )
    reach += STEP;
  return reach > UNTOLD ? null : { strength, error: reach };
}

const LEAST_TOLD = 4;
const [WEAKEST, STRONGEST, STEP] = [-0.6, 1, 0.02];
/** A standard error beyond which nothing is told. */
const UNTOLD = 0.3;

function misfit(sheets: readonly (readonly Steepness[])[], strength: number): number {
  let sum = 0;
  for (const colours of sheets) {
    let [along, squares] = [0, 0];
    for (const { level, steep, error } of colours) {
      const bent = (1 + strength * bendAt(level)) / error;
      along += (steep / error) * bent;
      squares += bent * bent;
    }
    for (const { level, steep, error } of colours) {
      const off = (steep - (along / squares) * (1 + strength * bendAt(level))) / error;
      sum += Math.min(9, off * off);
    }
  }
  return sum;
}
