import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { Typed } from '../table/typed.tsx';
import { guideWords } from '../words/guide.ts';

interface Props {
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly set: (value: number) => void;
}

/** A number with a large minus and plus. */
export function Stepper({ label, value, least, most, set }: Props): VNode {
  const within = (to: number): void => {
    if (Number.isFinite(to)) set(Math.min(most, Math.max(least, Math.round(to))));
  };
  return (
    <div class="stepper">
      <span>{label}</span>
      <div>
        <button
          type="button"
          class="round"
          disabled={value <= least}
          aria-label={guideWords.fewer(label)}
          onClick={() => within(value - 1)}
        >
          <Icon name="minus" />
        </button>
        <Typed
          class="count"
          type="number"
          inputMode="numeric"
          min={least}
          max={most}
          value={value}
          aria-label={label}
          settle={(many) => within(Number(many))}
        />
        <button
          type="button"
          class="round"
          disabled={value >= most}
          aria-label={guideWords.more(label)}
          onClick={() => within(value + 1)}
        >
          <Icon name="plus" />
        </button>
      </div>
    </div>
  );
}
