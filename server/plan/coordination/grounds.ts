import { LIGHT_GROUND, NEAR, NEAR_GROUND, OTHER_GROUND } from '../weights.ts';
import { chroma } from './look.ts';
import type { ColourTable, Look } from './look.ts';
import { nearMiss, same } from './steps.ts';

/**
 * Grounds: 1 when both are the same, a little less when they are clearly different, near 0 when one is
 * almost the other (white beside cream). Light grounds are judged more strictly than coloured ones.
 */
export function grounds(a: Look, b: Look, table: ColourTable): number {
  const apart = table.between(a.ground.index, b.ground.index);
  const alike = same(apart);
  const window = isLight(a) && isLight(b) ? NEAR_GROUND : NEAR;
  return alike + (1 - alike) * OTHER_GROUND * (1 - nearMiss(apart, window));
}

function isLight(look: Look): boolean {
  const { lab } = look.ground;
  return lab.l >= LIGHT_GROUND.lightness && chroma(lab) <= LIGHT_GROUND.chroma;
}
