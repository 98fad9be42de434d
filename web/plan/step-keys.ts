import { useEffect, useRef } from 'preact/hooks';
import { redo, undo, type StepsAt } from './steps.ts';

/** Ctrl+Z and Ctrl+Y (or Shift+Ctrl+Z) walk the plans like the undo and redo buttons. */
export function useStepKeys(at: StepsAt): void {
  // Read when the key is pressed: two quick presses are two steps, whatever is drawn by then.
  const now = useRef(at);
  now.current = at;
  useEffect(() => {
    function press(event: KeyboardEvent): void {
      if (!(event.ctrlKey || event.metaKey) || isTyping(event.target)) return;
      const key = event.key.toLowerCase();
      const onward = key === 'y' || (key === 'z' && event.shiftKey);
      if (!onward && key !== 'z') return;
      if (onward ? redo(now.current) : undo(now.current)) event.preventDefault();
    }
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [at.pad]);
}

function isTyping(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement && target.type === 'text';
}
