import { useRef, useState } from 'preact/hooks';
import type { VNode } from 'preact';

interface Props {
  readonly value: string | number;
  /** Takes what was typed once she is done with the field; where it is a promise, that stays in it until then. */
  readonly settle: (text: string) => unknown;
  readonly class?: string;
  readonly type?: 'number';
  readonly inputMode?: 'numeric';
  readonly min?: string | number;
  readonly max?: string | number;
  readonly maxLength?: number;
  readonly autoComplete?: string;
  readonly 'aria-label'?: string;
}

/**
 * A field whose value stands elsewhere. What she types stays in it until it is settled: drawn again meanwhile, as when
 * an answer arrives, a bare field would go back to the value that was, and what she typed would be lost without a word.
 */
export function Typed({ value, settle, ...rest }: Props): VNode {
  const [typed, setTyped] = useState<string | null>(null);
  const typing = useRef(false);
  const isTyping = (): boolean => typing.current;
  async function done(text: string): Promise<void> {
    typing.current = false;
    await settle(text);
    // She may be typing again by now.
    if (!isTyping()) setTyped(null);
  }
  return (
    <input
      {...rest}
      value={typed ?? value}
      onInput={(event) => {
        typing.current = true;
        setTyped(event.currentTarget.value);
      }}
      onChange={(event) => void done(event.currentTarget.value)}
    />
  );
}
