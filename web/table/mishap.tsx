import { Component, type ComponentChildren, type VNode } from 'preact';
import type { Problem } from '../../server/contract/values.ts';
import { mishapWords } from '../words/mishap.ts';
import { Icon } from './icon.tsx';

/** What can be done instead, and what is said of it. */
export interface Instead {
  readonly say: string;
  readonly act: () => void;
}

interface MishapProps {
  readonly problem: Problem;
  readonly again?: () => void;
  readonly otherwise?: Instead | null;
  /** Takes the notice away. */
  readonly away?: () => void;
}

/** A problem in plain words with what to do, and a way to try again. */
export function Mishap({ problem, again, otherwise, away }: MishapProps): VNode {
  return (
    <div class="mishap" role="alert">
      <Icon name="caution" />
      <div>
        <p>
          <strong>{problem.detail}</strong>
        </p>
        {problem.mend && <p>{problem.mend}</p>}
        {again && (
          <button type="button" class="button quiet" onClick={again}>
            {mishapWords.again}
          </button>
        )}
        {otherwise && (
          <button type="button" class="button quiet" onClick={otherwise.act}>
            {otherwise.say}
          </button>
        )}
      </div>
      {away && (
        <button type="button" class="round" aria-label={mishapWords.away} onClick={away}>
          <Icon name="close" />
        </button>
      )}
    </div>
  );
}

interface Props {
  readonly children: ComponentChildren;
}

/** Keeps a fault in one screen from taking the whole page: says so and offers to draw it again. */
export class Guarded extends Component<Props, { fault: string | null }> {
  override state = { fault: null };

  static override getDerivedStateFromError(fault: unknown): { fault: string } {
    return { fault: fault instanceof Error ? fault.message : String(fault) };
  }

  override render(): ComponentChildren {
    const { fault } = this.state as { fault: string | null };
    if (fault === null) return this.props.children;
    return (
      <div class="screen">
        <div class="mishap" role="alert">
          <Icon name="caution" />
          <div>
            <p>
              <strong>{mishapWords.drawing}</strong>
            </p>
            <p>{mishapWords.drawingMend}</p>
            <p class="small">{fault}</p>
            <button type="button" class="button" onClick={() => this.setState({ fault: null })}>
              {mishapWords.again}
            </button>
          </div>
        </div>
      </div>
    );
  }
}
