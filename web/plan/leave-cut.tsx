import { useEffect, useRef, useState } from 'preact/hooks';
import type { VNode } from 'preact';
import { ticksDone } from '../guide/ticked.ts';
import { Dialog } from '../table/dialog.tsx';
import { earlierWords } from '../words/earlier.ts';
import { ticks } from '../wire/shelves.ts';

const say = earlierWords.leave;

export interface LeaveCut {
  /**
   * Does what makes another plan; where steps of this plan's guide are done, only once she has said so. `of` is the
   * plan where it was not known yet when the screen was drawn.
   */
  readonly first: (act: () => void, of?: string | null) => Promise<void>;
  /** What she is asked, to be shown; null while she is not. */
  readonly question: VNode | null;
}

interface Asked {
  readonly plan: string;
  readonly act: () => void;
}

/** Asks before a plan is left that she has begun to cut: its ticks stay with it, the next plan begins without. */
export function useLeaveCut(plan: string | null): LeaveCut {
  const [asked, setAsked] = useState<Asked | null>(null);
  const agreed = useRef<string | null>(null);
  const done = plan === null ? 0 : ticksDone(plan);
  // Said of one plan; when she is back at it, she is asked anew.
  useEffect(() => {
    agreed.current = null;
  }, [plan]);

  async function first(act: () => void, of: string | null = plan): Promise<void> {
    if (of === null || agreed.current === of) {
      act();
      return;
    }
    const decide = (): void => {
      // Where they could not be asked for, she is asked: she knows whether she has cut.
      if (ticks.at(of).peek().value !== null && ticksDone(of) === 0) act();
      else setAsked({ plan: of, act });
    };
    if (ticks.at(of).peek().value === null) await ticks.fresh(of);
    decide();
  }

  function goOn(): void {
    agreed.current = plan;
    setAsked(null);
    asked?.act();
  }

  // A wish of before may have made another plan meanwhile: of that one it is asked anew.
  useEffect(() => {
    if (asked === null || plan === null || asked.plan === plan) return;
    setAsked(null);
    void first(asked.act);
  }, [asked, plan]);

  const stay = (): void => setAsked(null);
  if (asked?.plan !== plan) return { first, question: null };
  const question = (
    <Dialog title={say.heading(done)} close={stay}>
      <p>{say.said(done)}</p>
      <div class="ends">
        <button type="button" class="button quiet" onClick={goOn}>
          {say.goOn}
        </button>
        <button type="button" class="button" onClick={stay}>
          {say.stay}
        </button>
      </div>
    </Dialog>
  );
  return { first, question };
}
