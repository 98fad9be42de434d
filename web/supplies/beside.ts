import type { Supply } from '../../server/contract/supplies.ts';

/** What lies beside a pad: all that is hers, and what came with this very pad. Without a pad, all there is. */
export function besidePad(supplies: readonly Supply[], pad: string | null): Supply[] {
  return supplies.filter((supply) => pad === null || supply.pad === null || supply.pad === pad);
}
