import type { VNode } from 'preact';
import { millimetres } from '../lengths/lengths.ts';
import { padsWords } from '../words/pads.ts';

export interface SheetSize {
  readonly key: string;
  readonly words: string;
  readonly width: string;
  readonly height: string;
}

/** The usual sizes of pads (common practice, and ISO 216 for A5). */
export const sheetSizes: readonly [SheetSize, ...SheetSize[]] = [
  { key: '6', words: '6 × 6 in', width: '6 in', height: '6 in' },
  { key: '8', words: '8 × 8 in', width: '8 in', height: '8 in' },
  { key: '12', words: '12 × 12 in', width: '12 in', height: '12 in' },
  { key: '15', words: '15 × 15 cm', width: '150 mm', height: '150 mm' },
  { key: 'A5', words: 'A5', width: '148 mm', height: '210 mm' },
];

interface Props {
  readonly chosen: SheetSize;
  readonly choose: (size: SheetSize) => void;
}

/** The sizes as papers drawn beside each other at one scale, and a place for her own. */
export function SheetSizes({ chosen, choose }: Props): VNode {
  const own = chosen.key === 'own';
  return (
    <fieldset class="sheet-sizes">
      <legend>{padsWords.size}</legend>
      {sheetSizes.map((size) => (
        <SizeChoice key={size.key} size={size} checked={chosen.key === size.key} choose={choose} />
      ))}
      <SizeChoice
        size={{ key: 'own', words: padsWords.ownSize, width: '6 in', height: '6 in' }}
        checked={own}
        choose={choose}
      />
      {own && (
        <div class="pair">
          <label class="field">
            <span>{padsWords.width}</span>
            <input
              name="width"
              required
              value={chosen.width}
              onInput={(event) => choose({ ...chosen, width: event.currentTarget.value })}
            />
          </label>
          <label class="field">
            <span>{padsWords.height}</span>
            <input
              name="height"
              required
              value={chosen.height}
              onInput={(event) => choose({ ...chosen, height: event.currentTarget.value })}
            />
          </label>
        </div>
      )}
    </fieldset>
  );
}

function SizeChoice({
  size,
  checked,
  choose,
}: {
  size: SheetSize;
  checked: boolean;
  choose: (size: SheetSize) => void;
}): VNode {
  const edge = (length: string): number => (millimetres(length) ?? 150) / 5.5;
  return (
    <label class="size-choice">
      <input type="radio" name="size" checked={checked} onChange={() => choose(size)} />
      <svg viewBox="0 0 60 60" aria-hidden="true" class={size.key === 'own' ? 'own' : ''}>
        <rect
          x={30 - edge(size.width) / 2}
          y={58 - edge(size.height)}
          width={edge(size.width)}
          height={edge(size.height)}
        />
      </svg>
      <span>{size.words}</span>
    </label>
  );
}
