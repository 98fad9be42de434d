import type { VNode } from 'preact';
import type { PaletteColour } from '../../server/contract/pads.ts';
import { padWords } from '../words/pad.ts';
import { words } from '../words/words.ts';

/** A palette as a list to read: each colour, its name, how much of the paper it takes. */
export function PaletteWords({ palette }: { palette: readonly PaletteColour[] }): VNode {
  return (
    <ul class="palette-words">
      {palette.map((colour) => (
        <li key={colour.hex}>
          <span class="chip" style={{ background: colour.hex }} />
          <span>
            {colour.name}
            {colour.role === 'ground' && <em> {padWords.ground}</em>}
          </span>
          <span class="small">{words.percent(colour.share)}</span>
        </li>
      ))}
    </ul>
  );
}
