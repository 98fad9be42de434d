import { useEffect, useRef } from 'preact/hooks';
import { neighbours, type Step } from './steps.ts';

/** Ctrl+Z and Ctrl+Y (or Shift+Ctrl+Z) walk the plans like the undo and redo buttons. */
export function useStepKeys(pad: string, plan: string, show: (step: Step) => void): void {
  // Read when the key is pressed: two quick presses are two steps, whatever is drawn by then.
  const now = useRef({ plan, show });
  now.current = { plan, show };
  useEffect(() => {
    function press(event: KeyboardEvent): void {
      if (!(event.ctrlKey || event.metaKey) || isTyping(event.target)) return;
      const { before, after } = neighbours(pad, now.current.plan);
      const key = event.key.toLowerCase();
      const onward = key === 'y' || (key === 'z' && event.shiftKey);
      const step = onward ? after : key === 'z' ? before : undefined;
      if (!step) return;
      event.preventDefault();
      now.current.show(step);
    }
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [pad]);
}

function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement && target.type === 'text';
}
