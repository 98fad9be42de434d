import { useEffect } from 'preact/hooks';
import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { words } from '../words.ts';
import { stepsOf, type Step } from './steps.ts';

interface Props {
  readonly pad: string;
  readonly plan: string;
  readonly show: (step: Step) => void;
}

/** Back to the plan before and on to the one after, without limit; Ctrl+Z and Ctrl+Y do the same. */
export function StepButtons({ pad, plan, show }: Props): VNode {
  const steps = stepsOf(pad);
  const at = steps.findIndex((step) => step.plan === plan);
  const before = at > 0 ? steps[at - 1] : undefined;
  const after = at >= 0 ? steps[at + 1] : undefined;
  useEffect(() => {
    function press(event: KeyboardEvent): void {
      if (!(event.ctrlKey || event.metaKey) || isTyping(event.target)) return;
      const key = event.key.toLowerCase();
      const step =
        key === 'y' || (key === 'z' && event.shiftKey) ? after : key === 'z' ? before : null;
      if (!step) return;
      event.preventDefault();
      show(step);
    }
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [before, after]);
  return (
    <div class="steps" role="group" aria-label={words.plan.steps}>
      <button
        type="button"
        class="round"
        disabled={!before}
        aria-label={words.plan.undo}
        onClick={() => before && show(before)}
      >
        <Icon name="undo" />
      </button>
      <button
        type="button"
        class="round"
        disabled={!after}
        aria-label={words.plan.redo}
        onClick={() => after && show(after)}
      >
        <Icon name="redo" />
      </button>
    </div>
  );
}

function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement && target.type === 'text';
}
