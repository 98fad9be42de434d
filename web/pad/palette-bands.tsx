import type { VNode } from 'preact';
import type { PaletteColour } from '../../server/contract/pads.ts';
import { padWords } from '../words/pad.ts';

/** A palette as bands as wide as their share; the words say the same for those who do not see it. */
export function PaletteBands({ palette }: { palette: readonly PaletteColour[] }): VNode {
  return (
    <span class="bands" role="img" aria-label={padWords.palette(palette)}>
      {palette.map((colour) => (
        <span
          key={colour.hex}
          style={{ flexGrow: String(Math.max(colour.share, 0.02)), background: colour.hex }}
        />
      ))}
    </span>
  );
}
