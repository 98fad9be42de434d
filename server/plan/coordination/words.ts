import { nameOf } from '../../colour/names.ts';
import type { Lab } from '../../colour/lab.ts';

/** A share as a person says it. */
export function percent(share: number): string {
  return share < 0.01 ? 'under 1 %' : `${Math.round(share * 100)} %`;
}

export function words(lab: Lab): string {
  return nameOf(lab).words;
}
