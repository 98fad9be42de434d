import type { VNode } from 'preact';
import { matchWords } from '../words/match.ts';

interface Props {
  readonly of: string;
  readonly text: string;
  /** In CIEDE2000; null where nothing was measured. */
  readonly measured: { readonly difference: number; readonly uncertainty: number } | null;
}

/** The whole sentence is at hand; in every line of a list it would be read once too often. */
export function Why({ of, text, measured }: Props): VNode {
  return (
    <details class="small figures">
      <summary>
        {matchWords.why}
        <span class="unseen">: {of}</span>
      </summary>
      <p>{text}</p>
      {measured !== null && (
        <details>
          <summary>{matchWords.figures}</summary>
          <p>{matchWords.difference(measured.difference, measured.uncertainty)}</p>
        </details>
      )}
    </details>
  );
}
