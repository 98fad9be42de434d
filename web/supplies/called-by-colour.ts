import type { Supply } from '../../server/contract/supplies.ts';

/** Whether the name of a supply is that of its colour, perhaps counted on, so that nobody has to read it twice. */
export function isCalledByColour({
  name,
  colour,
}: Pick<Supply, 'name'> & { readonly colour: Pick<Supply['colour'], 'name'> }): boolean {
  return name.replace(/ \d+$/, '').toLowerCase() === colour.name.toLowerCase();
}
