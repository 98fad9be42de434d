import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Problem } from '../../server/contract/values.ts';
import { Mishap } from '../table/mishap.tsx';
import { useLate } from '../table/use-late.ts';
import { guideWords } from '../words/guide.ts';
import { words } from '../words/words.ts';
import { AllSteps } from './all-steps.tsx';
import { HowElse } from './how-else.tsx';
import { Now } from './now.tsx';
import { usePicturesAhead } from './pictures-ahead.ts';
import { PrintLinks } from './print-links.tsx';
import { stepsOf, type GuideBook } from './steps-of.ts';
import { isTicked } from './ticked.ts';

interface Props {
  readonly book: GuideBook;
  /** Why it cannot be cut for so many people. */
  readonly problem: Problem | null;
  /** Another count of people or another stack is on its way; the book is the one before. */
  readonly coming: boolean;
}

/** How far she is, the step at hand, and below them all steps and how else it could be cut. */
export function GuideSteps({ book, problem, coming }: Props): VNode {
  const { plan } = book.table;
  const steps = stepsOf(book);
  usePicturesAhead(steps);
  // Until she goes elsewhere, the first step that is not done: also when its ticks come late.
  const [chosen, setChosen] = useState<number | null>(null);
  const open = steps.findIndex((step) => !isTicked(plan.id, step.id));
  const here = Math.min(chosen ?? (open < 0 ? Infinity : open), steps.length - 1);
  const step = steps[here];
  const done = steps.filter(({ id }) => isTicked(plan.id, id)).length;
  const late = useLate(coming);
  return (
    <>
      <div class="heading-line">
        <h1>{guideWords.heading}</h1>
        <PrintLinks book={book} />
      </div>
      <div class="how-far" aria-busy={coming}>
        <p role="status">{late ? words.waiting : guideWords.done(done, steps.length)}</p>
        <progress
          class="ruler-progress"
          value={done}
          max={steps.length}
          aria-label={guideWords.progress}
        />
      </div>
      {problem && <Mishap problem={problem} />}
      {step && (
        <Now
          step={step}
          book={book}
          number={here + 1}
          count={steps.length}
          move={(by) => setChosen(Math.min(steps.length - 1, Math.max(0, here + by)))}
        />
      )}
      <AllSteps plan={plan.id} steps={steps} at={here} go={setChosen} />
      <HowElse book={book} />
    </>
  );
}
