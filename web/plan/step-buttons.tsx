import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { planWords } from '../words/plan.ts';
import { neighbours, redo, undo, type StepsAt } from './steps.ts';

/** Back to the plan before and on to the one after, without limit. */
export function StepButtons(at: StepsAt): VNode {
  const { before, after } = neighbours(at.pad, at.plan);
  return (
    <div class="steps" role="group" aria-label={planWords.steps}>
      <button
        type="button"
        class="round wide"
        disabled={!before && !at.wishing}
        onClick={() => undo(at)}
      >
        <Icon name="undo" />
        <span>{planWords.undo}</span>
      </button>
      <button
        type="button"
        class="round wide"
        disabled={!after || at.wishing}
        onClick={() => redo(at)}
      >
        <Icon name="redo" />
        <span>{planWords.redo}</span>
      </button>
    </div>
  );
}
