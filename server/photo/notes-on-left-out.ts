import type { Region } from './regions.ts';

/** From how many sheets' worth of unclear things she is told. */
const WORTH_A_WORD = 0.3;

export function notesOnLeftOver(sheets: number, unsure: number): string[] {
  if (sheets < WORTH_A_WORD || unsure > 0) return [];
  return [
    'Something else lies on the table that could not be told apart, perhaps another sheet; add it by its corners, or take the photo again with a finger’s width around each sheet.',
  ];
}

export function notesOnCutOff(cutOff: readonly Region[], usual: number): string[] {
  const large = cutOff.filter(({ pixels }) => pixels.length > 0.12 * usual);
  if (large.length === 0) return [];
  return [
    large.length === 1
      ? 'One paper lies partly outside the picture and was left out; photograph it again whole.'
      : `${large.length} papers lie partly outside the picture and were left out; photograph them again whole.`,
  ];
}

/** A paper that looks just like the table may lie between two others; nothing but the rows can tell. */
export function notesOnEmptyPlaces(places: number): string[] {
  if (places === 0) return [];
  return [
    places === 1
      ? 'One place between the sheets looks empty; if a sheet lies there, add it by its corners.'
      : `${places} places between the sheets look empty; if sheets lie there, add them by their corners.`,
  ];
}
