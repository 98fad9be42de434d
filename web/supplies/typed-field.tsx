import type { VNode } from 'preact';
import type { ColourNames } from '../../server/contract/supplies.ts';
import { suppliesWords } from '../words/supplies.ts';
import { typedColour } from './typed-colour.ts';

interface Props {
  readonly value: string;
  readonly names: ColourNames['names'];
  readonly type: (value: string) => void;
}

/** Where a colour is typed, with the names that are known to choose from and the colour beside it. */
export function TypedField({ value, names, type }: Props): VNode {
  const say = suppliesWords;
  const typed = typedColour(value, names);
  return (
    <label class="field">
      <span>{say.colour}</span>
      <span class="colour-field">
        <input
          name="colour"
          required
          value={value}
          list="colour-names"
          autoComplete="off"
          placeholder={say.colourHint}
          aria-invalid={value !== '' && typed === null}
          onInput={(event) => type(event.currentTarget.value)}
        />
        <span class="chip big" style={{ background: typed?.shown ?? 'transparent' }} />
      </span>
      <datalist id="colour-names">
        {names.map(({ name }) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      <span class="small">
        {typed === null
          ? value === ''
            ? say.colourHow
            : say.colourUnread
          : typed.roughly
            ? say.colourRoughly
            : say.colourExact}
      </span>
    </label>
  );
}
