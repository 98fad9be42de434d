import type { Lab } from '../../colour/lab.ts';
import { nameOf } from '../../colour/names.ts';
import { hexFromLab } from '../../colour/spaces.ts';
import type { LabTriple } from '../../contract/values.ts';

export function labOnWire({ l, a, b }: Lab): LabTriple {
  return [rounded(l, 0, 100), rounded(a, -200, 200), rounded(b, -200, 200)];
}

export function labFromWire([l, a, b]: LabTriple): Lab {
  return { l, a, b };
}

/** A colour as it goes over the wire: Lab, what a screen shows, what it is called. */
export function colourOnWire(lab: Lab): { lab: LabTriple; hex: string; name: string } {
  return { lab: labOnWire(lab), hex: hexFromLab(lab), name: nameOf(lab).words };
}

function rounded(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, Math.round(value * 1000) / 1000));
}
