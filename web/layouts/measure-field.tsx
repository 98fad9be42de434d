import { useEffect, useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Layer } from '../../server/contract/layouts.ts';
import { editorWords } from '../words/editor.ts';
import type { Measure } from './place-layer.ts';

interface Props<T extends { readonly box: Layer['box'] }> {
  readonly what: Measure;
  readonly of: T;
  readonly take: (text: string) => T | null;
  readonly change: (next: T) => void;
}

/** A length as a person writes it; what cannot be read stays in the field and is told. */
export function MeasureField<T extends { readonly box: Layer['box'] }>({
  what,
  of,
  take,
  change,
}: Props<T>): VNode {
  const now = of.box[what];
  const [text, setText] = useState(now);
  const [wrong, setWrong] = useState(false);
  useEffect(() => {
    setText(now);
    setWrong(false);
  }, [now]);
  return (
    <label class="field">
      <span>{editorWords.measures[what]}</span>
      <input
        value={text}
        autoComplete="off"
        aria-invalid={wrong}
        onInput={(event) => setText(event.currentTarget.value)}
        onChange={(event) => {
          const next = take(event.currentTarget.value);
          setWrong(next === null);
          if (next === null) return;
          setText(next.box[what]);
          change(next);
        }}
      />
      {wrong && <span class="small">{editorWords.unreadable}</span>}
    </label>
  );
}
