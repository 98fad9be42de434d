import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import { millimetres } from '../lengths/lengths.ts';
import { ruler } from '../table/settings.ts';
import { leftWords } from '../words/left.ts';
import { padsWords } from '../words/pads.ts';

interface Part {
  readonly sheet: string;
  readonly size: { readonly width: string; readonly height: string };
}

interface Props {
  readonly pad: Pad;
  /** Whether it was taken in. */
  readonly add: (part: Part) => Promise<boolean>;
}

/** A part that she has measured herself. */
export function NewPart({ pad, add }: Props): VNode {
  const [sheet, setSheet] = useState(pad.sheets[0]?.id ?? '');
  const [width, setWidth] = useState('');
  const [height, setHeight] = useState('');
  const unit = ruler.value;
  const read = [width, height].map((text) => millimetres(text, unit));
  const fits = read.every((mm) => mm !== null && mm > 0);
  const withUnit = (text: string): string => (/[a-z"″]\s*$/i.test(text) ? text : `${text} ${unit}`);

  async function submit(event: Event): Promise<void> {
    event.preventDefault();
    if (!fits) return;
    const size = { width: withUnit(width.trim()), height: withUnit(height.trim()) };
    if (!(await add({ sheet, size }))) return;
    setWidth('');
    setHeight('');
  }

  return (
    <form class="new-part" onSubmit={(event) => void submit(event)}>
      <label class="field">
        <span>{leftWords.sheet}</span>
        <select value={sheet} onChange={({ currentTarget }) => setSheet(currentTarget.value)}>
          {pad.sheets.map(({ id, label }) => (
            <option key={id} value={id}>
              {label}
            </option>
          ))}
        </select>
      </label>
      {(
        [
          [padsWords.width, width, setWidth],
          [padsWords.height, height, setHeight],
        ] as const
      ).map(([label, value, set]) => (
        <label key={label} class="field">
          <span>{label}</span>
          <input
            value={value}
            placeholder={unit === 'in' ? '2 1/4' : '57'}
            onInput={({ currentTarget }) => set(currentTarget.value)}
          />
        </label>
      ))}
      <button type="submit" class="button quiet" disabled={!fits}>
        {leftWords.add}
      </button>
    </form>
  );
}
