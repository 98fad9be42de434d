/** Workers and those who wait for one. */
import { Refusal } from './refusals/refusal.ts';
import type { RefusalText } from './refusals/refusal.ts';
import { Stopped } from './processes.ts';

/** A class does not survive the way between workers, so a refusal travels as its text. */
export type Answer<T> = { readonly value: T } | { readonly refusal: RefusalText };

export interface Line {
  /**
   * Lets a worker do one thing.
   *
   * Throws      the Refusal that the work ended in; one of kind 'busy' when too many wait already; one of kind
   *             'too-large' when it took too long or too much memory and was stopped.
   */
  run<T>(name: string, task: unknown): Promise<T>;
  /** How many are at work or wait. */
  load(): number;
  close(): Promise<void>;
}

/** Who does the work: called for no more tasks at once than there are places. */
export interface Workers {
  run(name: string, task: unknown, milliseconds: number): Promise<unknown>;
  close(): Promise<void>;
}

export interface LineSettings {
  readonly places: number;
  /** So many may wait; the next one is refused. */
  readonly waiting: number;
  /** In milliseconds. */
  readonly patience: number;
  /** What is worked on here, so that a refusal says what she can do about it. */
  readonly about: Work;
}

export type Work = keyof typeof WORDS;

const WORDS = {
  photo: {
    many: 'pictures',
    slow: 'Try a smaller picture.',
    large: 'Save the picture smaller and send it again.',
  },
  plan: {
    many: 'plans and guides',
    slow: 'Try it with fewer cards at once; what was planned before is still there.',
    large: 'Try it with fewer cards at once; what was planned before is still there.',
  },
  pad: {
    many: 'pads and guides',
    slow: 'Try it again; a pad that stays too large can be laid out as two.',
    large: 'A pad that is too large can be laid out as two.',
  },
} as const;

/** The clock of a task starts when it has its worker, not when it joins. */
export function openLine(
  workers: Workers,
  { places, waiting: most, patience, about }: LineSettings,
): Line {
  const waiting: (() => void)[] = [];
  let busy = 0;

  const takePlace = async (): Promise<void> => {
    if (busy < places) busy += 1;
    else if (waiting.length < most) await new Promise<void>((go) => waiting.push(go));
    else throw tooBusy(about, waiting.length + busy);
  };
  const givePlace = (): void => {
    const next = waiting.shift();
    if (next === undefined) busy -= 1;
    else next();
  };

  return {
    run: async <T>(name: string, task: unknown) => {
      await takePlace();
      try {
        const answer = (await workers.run(name, task, patience)) as Answer<T>;
        if ('refusal' in answer) throw new Refusal(answer.refusal);
        return answer.value;
      } catch (fault) {
        throw given(fault, about, patience);
      } finally {
        givePlace();
      }
    },
    load: () => busy + waiting.length,
    close: () => workers.close(),
  };
}

/** What a worker gives back: the value, or the refusal that the work ended in. */
export async function answerWith<T>(work: () => T | Promise<T>): Promise<Answer<T>> {
  try {
    return { value: await work() };
  } catch (fault) {
    if (!(fault instanceof Refusal)) throw fault;
    const { kind, field, received, message, mend } = fault;
    return { refusal: { kind, field, received: shown(received), message, mend } };
  }
}

/** Only what can travel: a value that cannot be cloned is told by its kind. */
function shown(received: unknown): unknown {
  return typeof received === 'function' || typeof received === 'symbol'
    ? typeof received
    : received;
}

function tooBusy(about: Work, ahead: number): Refusal {
  return new Refusal({
    kind: 'busy',
    field: about,
    received: null,
    message: `There are ${ahead} ${WORDS[about].many} being worked on already`,
    mend: 'Wait a moment, then send it again; nothing is lost by waiting.',
  });
}

/** A worker that was stopped or that ran out of memory says nothing for her to act on; this does. */
function given(fault: unknown, about: Work, patience: number): unknown {
  if (!(fault instanceof Error)) return fault;
  if (fault.name === 'AbortError' || (fault instanceof Stopped && fault.why === 'time'))
    return new Refusal({
      kind: 'too-large',
      field: about,
      received: null,
      message: `This took longer than ${Math.round(patience / 1000)} seconds and was stopped`,
      mend: WORDS[about].slow,
    });
  if (isShortOfMemory(fault))
    return new Refusal({
      kind: 'too-large',
      field: about,
      received: null,
      message: 'This needed more memory than it may take and was stopped',
      mend: WORDS[about].large,
    });
  return fault;
}

/** A decoder that is refused memory ends its process, or its next array cannot be made. */
function isShortOfMemory(fault: Error): boolean {
  return (
    fault instanceof Stopped ||
    ('code' in fault && fault.code === 'ERR_WORKER_OUT_OF_MEMORY') ||
    (fault instanceof RangeError &&
      /allocation failed|Invalid typed array length/.test(fault.message))
  );
}
