import { useEffect, useRef, useState } from 'preact/hooks';
import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { guideWords } from '../words/guide.ts';
import { ActLines } from './act-lines.tsx';
import { KeepLeft } from './keep-left.tsx';
import { BaseDrawing, FinishDrawing } from './piece-drawing.tsx';
import { NumberedSheets } from './numbered-sheets.tsx';
import { ShownOn } from './shown-on.tsx';
import { Stacks } from './stacks.tsx';
import type { Act, Stack, Step } from './step.ts';
import type { GuideBook } from './steps-of.ts';
import { Takes } from './takes.tsx';
import { isTicked, tick } from './ticked.ts';

interface Props {
  readonly step: Step;
  readonly book: GuideBook;
  readonly number: number;
  readonly count: number;
  readonly move: (by: number) => void;
}

/** The step at hand: its picture with the one act that comes next, large, or the one she touched; all its acts to look at and to tick below. */
export function Now({ step, book, number, count, move }: Props): VNode {
  const plan = book.table.plan.id;
  const ticked = isTicked(plan, step.id);
  const next = ticked ? null : (step.acts.find(({ id }) => !isTicked(plan, id)) ?? null);
  // An act that she touched to look at it stays until she ticks something or goes to another step.
  const [looked, setLooked] = useState<string | null>(null);
  const now = step.acts.find(({ id }) => id === looked) ?? next;
  const done = looked !== null && now?.id === looked ? isTicked(plan, looked) : ticked;
  useEffect(() => setLooked(null), [step.id]);

  function settle(done: boolean): void {
    if (done !== ticked) tick(plan, step.id, done);
  }

  function tickAct(act: Act, done: boolean): void {
    setLooked(null);
    tick(plan, act.id, done);
    const others = step.acts.filter(({ id }) => id !== act.id);
    const all = done && others.every(({ id }) => isTicked(plan, id));
    if (step.stacks.length === 0 || !done) settle(all);
  }

  /** The next stack is cut by the same cuts from the first on. */
  function tickStack(stack: Stack, done: boolean): void {
    tick(plan, stack.id, done);
    const all = done && step.stacks.every(({ id }) => id === stack.id || isTicked(plan, id));
    if (done && !all) for (const { id } of step.acts) if (isTicked(plan, id)) tick(plan, id, false);
    settle(all);
  }

  function press(): void {
    const waiting = step.stacks.find(({ id }) => !isTicked(plan, id));
    if (done && now !== null) {
      tickAct(now, false);
    } else if (done) {
      for (const { id } of [...step.acts, ...step.stacks])
        if (isTicked(plan, id)) tick(plan, id, false);
      settle(false);
    } else if (now !== null) {
      tickAct(now, true);
      const last = step.acts.every(({ id }) => id === now.id || isTicked(plan, id));
      if (last && waiting === undefined) move(1);
    } else if (waiting !== undefined) {
      tickStack(waiting, true);
      if (step.stacks.every(({ id }) => id === waiting.id || isTicked(plan, id))) move(1);
    } else {
      settle(true);
      move(1);
    }
  }

  const shown = now?.shown ?? null;
  const article = useRef<HTMLElement>(null);
  const here = `${step.id} ${now?.id ?? ''}`;
  const before = useRef(here);
  useEffect(() => {
    // What comes next is seen whole, wherever the page stood.
    if (before.current !== here) article.current?.scrollIntoView({ block: 'start' });
    before.current = here;
  }, [here]);
  return (
    <article
      ref={article}
      class={`now now-${step.kind}`}
      aria-label={guideWords.step(number, count)}
    >
      <p class="small">{guideWords.step(number, count)}</p>
      <h2>{step.title}</h2>
      <div class={step.picture ? 'now-body' : 'now-body plain'}>
        {step.picture && (
          <div class="now-pictures">
            <ShownOn
              picture={step.picture}
              shown={shown}
              said={now === null ? '' : lengthIn(now)}
              badges={step.acts.flatMap((act) =>
                act.shown?.kind === 'cut' || act.shown?.kind === 'finish'
                  ? [{ number: act.number, at: act.shown.badge }]
                  : [],
              )}
            />
          </div>
        )}
        <div class="now-words">
          {now && (
            <div class="act-now">
              <p class="small">
                {placeSaid(step, now)}
                {isTicked(plan, now.id) && guideWords.isDone}
              </p>
              <p class="act-main">{now.main}</p>
              {shown?.kind === 'finish' && <FinishDrawing {...shown} />}
              {shown?.kind === 'base' && <BaseDrawing {...shown} />}
              {now.small !== '' && <p class="act-small">{now.small}</p>}
            </div>
          )}
          <ul class="now-lines">
            {step.lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          {step.sheets && <NumberedSheets sheets={step.sheets} />}
          {step.takes && <Takes takes={step.takes} />}
          {(step.kind === 'paper' || step.kind === 'cardstock') && (
            <p class="blade-care">
              <Icon name="caution" /> {guideWords.blade}
            </p>
          )}
          {step.kind === 'left' && <KeepLeft book={book} />}
        </div>
      </div>
      <div class="now-buttons">
        <button type="button" class="button quiet" disabled={number === 1} onClick={() => move(-1)}>
          <Icon name="back" /> {guideWords.before}
        </button>
        <button type="button" class={done ? 'button quiet' : 'button'} onClick={press}>
          <Icon name={done ? 'undo' : 'tick'} /> {done ? guideWords.untick : guideWords.tick}
        </button>
        <button
          type="button"
          class="button quiet"
          disabled={number === count}
          onClick={() => move(1)}
        >
          {guideWords.after} <Icon name="next" />
        </button>
      </div>
      <ActLines
        plan={plan}
        acts={step.acts}
        shown={now}
        show={({ id }) => setLooked(id)}
        tick={tickAct}
      />
      <Stacks plan={plan} stacks={step.stacks} tick={tickStack} />
    </article>
  );
}

/** 'Cut 3 of 7'; of a card '3 of 7: stamp'. */
function placeSaid({ kind, acts }: Step, { number, part }: Act): string {
  const place = guideWords.act[kind](number, acts.length);
  return part === undefined ? place : guideWords.ofCard(place, guideWords.parts[part]);
}

/** The length of a cut as it stands on the drawing: what the words begin with. */
function lengthIn({ main }: Act): string {
  return /^.*? (?:in|mm)\b/.exec(main)?.[0] ?? '';
}
