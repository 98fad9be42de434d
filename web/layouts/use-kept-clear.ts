import { useEffect, useRef } from 'preact/hooks';
import type { RefObject } from 'preact';

/** What she works on comes clear of a box that comes to lie over the end of the form: a field under it would be written blindly. */
export function useKeptClear(covered: boolean): RefObject<HTMLDivElement | null> {
  const form = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const at = document.activeElement;
    if (covered && at !== null && form.current?.contains(at))
      at.scrollIntoView({ block: 'nearest' });
  }, [covered]);
  return form;
}
