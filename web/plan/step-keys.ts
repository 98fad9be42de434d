import { useEffect } from 'preact/hooks';
import { neighbours, type Step } from './steps.ts';

/** Ctrl+Z and Ctrl+Y (or Shift+Ctrl+Z) walk the plans like the undo and redo buttons. */
export function useStepKeys(pad: string, plan: string, show: (step: Step) => void): void {
  const { before, after } = neighbours(pad, plan);
  useEffect(() => {
    function press(event: KeyboardEvent): void {
      if (!(event.ctrlKey || event.metaKey) || isTyping(event.target)) return;
      const key = event.key.toLowerCase();
      const onward = key === 'y' || (key === 'z' && event.shiftKey);
      const step = onward ? after : key === 'z' ? before : undefined;
      if (!step) return;
      event.preventDefault();
      show(step);
    }
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [before, after]);
}

function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement && target.type === 'text';
}
