import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { planWords } from '../words/plan.ts';
import { neighbours, type Step } from './steps.ts';

interface Props {
  readonly pad: string;
  readonly plan: string;
  readonly show: (step: Step) => void;
}

/** Back to the plan before and on to the one after, without limit. */
export function StepButtons({ pad, plan, show }: Props): VNode {
  const { before, after } = neighbours(pad, plan);
  return (
    <div class="steps" role="group" aria-label={planWords.steps}>
      <button
        type="button"
        class="round wide"
        disabled={!before}
        onClick={() => before && show(before)}
      >
        <Icon name="undo" />
        <span>{planWords.undo}</span>
      </button>
      <button
        type="button"
        class="round wide"
        disabled={!after}
        onClick={() => after && show(after)}
      >
        <Icon name="redo" />
        <span>{planWords.redo}</span>
      </button>
    </div>
  );
}
