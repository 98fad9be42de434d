import type { Signal } from '@preact/signals';
import type { VNode } from 'preact';

interface Props<T extends string> {
  readonly legend: string;
  readonly name: string;
  readonly of: Signal<T>;
  readonly choices: readonly T[];
  readonly words: Readonly<Record<T, string>>;
}

/** One of a few, as a row of paper tabs. */
export function ChoiceRow<T extends string>({ legend, name, of, choices, words }: Props<T>): VNode {
  return (
    <fieldset class="choices">
      <legend>{legend}</legend>
      {choices.map((choice) => (
        <label key={choice} class="choice">
          <input
            type="radio"
            name={name}
            checked={of.value === choice}
            onChange={() => {
              of.value = choice;
            }}
          />
          <span data-words={words[choice]}>{words[choice]}</span>
        </label>
      ))}
    </fieldset>
  );
}
