import type { VNode } from 'preact';
import type { Taste } from '../../server/contract/plans.ts';
import { planWords } from '../words/plan.ts';

const middle: Taste = { contrast: 0, busy: 0, bold: 0 };
const tastes = ['contrast', 'busy', 'bold'] as const;

interface Props {
  readonly taste: Taste | undefined;
  readonly wish: (taste: Taste) => void;
}

/** How she likes her cards, between two words each. */
export function TasteSliders({ taste = middle, wish }: Props): VNode {
  return (
    <fieldset class="tastes">
      <legend>{planWords.taste}</legend>
      {tastes.map((name) => {
        const { least, most } = planWords.tastes[name];
        return (
          <label key={name} class="taste">
            <span>{least}</span>
            <input
              type="range"
              min="-1"
              max="1"
              step="0.25"
              value={taste[name]}
              aria-label={planWords.tasteOf(least, most)}
              onChange={(event) => wish({ ...taste, [name]: Number(event.currentTarget.value) })}
            />
            <span>{most}</span>
          </label>
        );
      })}
    </fieldset>
  );
}
