import { useEffect, useState } from 'preact/hooks';
import type { CheckedLayout, NewLayout } from '../../server/contract/layouts.ts';
import type { Problem } from '../../server/contract/values.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';

/** A walk of many steps asks once. */
const PAUSE_MS = 200;

interface Check {
  readonly checked: CheckedLayout | null;
  readonly fault: Problem | null;
}

/** What the service says of the layout as it stands; the last answer stays until the next one comes. */
export function useCheck(layout: NewLayout): Check {
  const [check, setCheck] = useState<Check>({ checked: null, fault: null });
  useEffect(() => {
    const question = new AbortController();
    const later = setTimeout(() => {
      service.checkLayout(layout, question.signal).then(
        (checked) => setCheck({ checked, fault: null }),
        (fault: unknown) => {
          if (!question.signal.aborted) setCheck({ checked: null, fault: asProblem(fault) });
        },
      );
    }, PAUSE_MS);
    return () => {
      clearTimeout(later);
      question.abort();
    };
  }, [layout]);
  return check;
}

/** The place in the stack of the layer that a problem names (`layers[2].box`), or null. */
export function faultyLayer(fault: Problem | null): number | null {
  const place = /^layers\[(\d+)\]/.exec(fault?.field ?? '');
  return place ? Number(place[1]) : null;
}
