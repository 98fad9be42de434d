import { useEffect, useState } from 'preact/hooks';

/** Sooner than this nothing is said of waiting, in milliseconds: the answer is there before it is read. */
const SOON_MS = 400;

/** True once something has gone on for a while. */
export function useLate(going: boolean): boolean {
  const [late, setLate] = useState(false);
  useEffect(() => {
    setLate(false);
    if (!going) return;
    const timer = setTimeout(() => setLate(true), SOON_MS);
    return () => clearTimeout(timer);
  }, [going]);
  return going && late;
}
