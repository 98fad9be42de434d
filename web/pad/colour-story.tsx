import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import { padWords } from '../words/pad.ts';

interface Props {
  readonly pad: Pad;
  readonly lit: string | null;
  readonly light: (hex: string | null) => void;
}

/** The few colours of the whole pad as strips of paper; touching one shows the papers that carry it. */
export function ColourStory({ pad, lit, light }: Props): VNode {
  return (
    <section aria-labelledby="story">
      <h2 id="story">{padWords.story}</h2>
      <ul class="story">
        {pad.story.map((colour) => (
          <li key={colour.hex} style={{ flexGrow: String(0.25 + colour.share) }}>
            <button
              type="button"
              class="story-strip"
              aria-pressed={lit === colour.hex}
              onClick={() => light(lit === colour.hex ? null : colour.hex)}
            >
              <span class="story-colour" style={{ background: colour.hex }} />
              <span class="story-name">{colour.name}</span>
              <span class="small">{padWords.carriedBy(colour.sides.length)}</span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
