import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { SlotCuts } from '../../server/contract/plans.ts';
import type { OnTable } from '../plan/table-of.ts';
import { Icon } from '../table/icon.tsx';
import { printPaper, ruler } from '../table/settings.ts';
import { words } from '../words.ts';
import { CutLines } from './cut-lines.tsx';
import { isTicked, tick } from './ticked.ts';
import { stepsOf, type Cut, type Step } from './steps-of.ts';

interface Props {
  readonly table: OnTable;
  readonly slots: readonly SlotCuts[];
}

/** The steps one at a time, ticked off as they are done; where she stopped is where it opens again. */
export function GuideSteps({ table, slots }: Props): VNode {
  const { plan } = table;
  const other = printPaper.value === 'a4' ? 'letter' : 'a4';
  const steps = stepsOf(table, slots, ruler.value);
  const firstOpen = steps.findIndex((step) => !isTicked(plan.id, step.id));
  const [at, setAt] = useState(Math.max(0, firstOpen));
  const step = steps[at];
  const done = steps.filter(({ id }) => isTicked(plan.id, id)).length;
  return (
    <>
      <div class="heading-line">
        <h1>{words.guide.heading}</h1>
        <div class="print-links">
          <a class="button quiet" href={`${plan.guide}?paper=${printPaper.value}`} target="_blank">
            <Icon name="print" /> {words.guide.print(words.settings.prints[printPaper.value])}
          </a>
          <a class="print-else" href={`${plan.guide}?paper=${other}`} target="_blank">
            {words.guide.printElse(words.settings.prints[other])}
          </a>
        </div>
      </div>
      <p class="caution">
        <Icon name="caution" /> {words.guide.caution}
      </p>
      <p role="status">{words.guide.done(done, steps.length)}</p>
      <progress
        class="ruler-progress"
        value={done}
        max={steps.length}
        aria-label={words.guide.progress}
      />
      {step && (
        <Now
          step={step}
          plan={plan.id}
          number={at + 1}
          count={steps.length}
          move={(by) => setAt(Math.min(steps.length - 1, Math.max(0, at + by)))}
        />
      )}
      <section aria-labelledby="all-steps">
        <h2 id="all-steps">{words.guide.all}</h2>
        <ol class="all-steps">
          {steps.map((one, index) => (
            <li key={one.id}>
              <button
                type="button"
                aria-current={index === at ? 'step' : undefined}
                onClick={() => setAt(index)}
              >
                {isTicked(plan.id, one.id) ? <Icon name="tick" /> : <span class="box" />}
                {one.title}
                {isTicked(plan.id, one.id) && <span class="unseen">{words.guide.isDone}</span>}
              </button>
            </li>
          ))}
        </ol>
      </section>
    </>
  );
}

interface NowProps {
  readonly step: Step;
  readonly plan: string;
  readonly number: number;
  readonly count: number;
  readonly move: (by: number) => void;
}

function Now({ step, plan, number, count, move }: NowProps): VNode {
  const ticked = isTicked(plan, step.id);
  function cutOff(cut: Cut, done: boolean): void {
    tick(plan, cut.id, done);
    const others = step.cuts.filter(({ id }) => id !== cut.id);
    const all = done && others.every(({ id }) => isTicked(plan, id));
    if (all !== ticked) tick(plan, step.id, all);
  }
  return (
    <article class="now" aria-label={words.guide.step(number, count)}>
      <p class="small">{words.guide.step(number, count)}</p>
      <h2>{step.title}</h2>
      <div class="now-body">
        {step.picture && (
          <img
            src={step.picture}
            alt={step.kind === 'cut' ? words.guide.laid : ''}
            class={`now-${step.kind}`}
          />
        )}
        <div>
          <ol class="now-lines">
            {step.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ol>
          <CutLines plan={plan} cuts={step.cuts} tick={cutOff} />
        </div>
      </div>
      <div class="now-buttons">
        <button type="button" class="button quiet" disabled={number === 1} onClick={() => move(-1)}>
          <Icon name="back" /> {words.guide.before}
        </button>
        <button
          type="button"
          class="button"
          aria-pressed={ticked}
          onClick={() => {
            tick(plan, step.id, !ticked);
            if (!ticked) move(1);
          }}
        >
          <Icon name="tick" /> {ticked ? words.guide.untick : words.guide.tick}
        </button>
        <button
          type="button"
          class="button quiet"
          disabled={number === count}
          onClick={() => move(1)}
        >
          {words.guide.after} <Icon name="next" />
        </button>
      </div>
    </article>
  );
}
