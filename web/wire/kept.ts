import { signal, type ReadonlySignal, type Signal } from '@preact/signals';
import type { Problem } from '../../server/contract/values.ts';
import { asProblem } from './ask.ts';
import { isPassing, TOLD_AFTER, waitAfter } from './lost.ts';

/** A value that is being fetched, is here, or was refused; an older value stays while a new one comes. */
export interface Kept<T> {
  readonly value: T | null;
  readonly problem: Problem | null;
  readonly waiting: boolean;
}

/** Values of the service by key, fetched once and shared by all components that look at them. */
export interface Shelf<T> {
  /** The value at a key; asks for it when it was never asked for, and again while it is looked at and only its question or answer was lost. */
  at(key: string): ReadonlySignal<Kept<T>>;
  /** Asks again; what is shown stays until the answer is here. */
  fresh(key: string): Promise<void>;
  /** Asks again for everything that someone has looked at. */
  freshAll(): void;
  /** Puts in a value that another answer brought along. */
  put(key: string, value: T): void;
}

/** What a shelf knows of her: whether she looks at the page, and that she, or the network, came back. */
export interface Around {
  readonly isSeen: () => boolean;
  readonly onComingBack: (act: () => void) => void;
}

/** One value, and what is known of the questions for it. Questions are counted, so that an older answer never takes the place of a newer one. */
interface Spot<T> {
  readonly shown: Signal<Kept<T>>;
  asked: number;
  /** The question whose answer, or the value put in, is the newest here. */
  here: number;
  underway: number;
  /** Something has changed while a question was under way: its answer may be older than that. */
  missed: boolean;
  looked: boolean;
  /** How often in a row it was lost, and the timer of the next try; null where none runs. */
  lost: number;
  timer: Timer;
}

type Timer = ReturnType<typeof setTimeout> | null;

export function shelfOf<T>(read: (key: string) => Promise<T>, around: Around): Shelf<T> {
  const spots = new Map<string, Spot<T>>();

  function spotAt(key: string): Spot<T> {
    const known = spots.get(key);
    if (known) return known;
    const fresh = newSpot<T>((looked) => {
      fresh.looked = looked;
      // Not within the drawing that begins to look.
      if (looked && fresh.timer === null) queueMicrotask(() => lookAgain(key, fresh));
    });
    spots.set(key, fresh);
    return fresh;
  }

  /** The spot, asked for when it never was. */
  function wanted(key: string): Spot<T> {
    const spot = spotAt(key);
    if (spot.asked === 0) void askFor(key, spot);
    return spot;
  }

  async function askFor(key: string, spot: Spot<T>): Promise<void> {
    stopTimer(spot);
    spot.asked += 1;
    spot.underway += 1;
    const mine = spot.asked;
    show(spot, { waiting: true });
    try {
      const value = await read(key);
      spot.underway -= 1;
      if (mine > spot.here) land(spot, mine, value);
    } catch (fault) {
      spot.underway -= 1;
      if (mine > spot.here) fail(key, spot, mine, fault);
    }
    if (spot.underway > 0) return;
    const { problem } = spot.shown.peek();
    show(spot, { waiting: spot.lost > 0 && problem === null });
    if (!spot.missed) return;
    spot.missed = false;
    void askFor(key, spot);
  }

  function land(spot: Spot<T>, turn: number, value: T): void {
    spot.here = turn;
    spot.lost = 0;
    const before = spot.shown.peek().value;
    // An equal answer keeps the value as it is, so that nothing is drawn again.
    const same = JSON.stringify(value) === JSON.stringify(before);
    show(spot, { value: same ? before : value, problem: null, waiting: spot.underway > 0 });
  }

  function fail(key: string, spot: Spot<T>, turn: number, fault: unknown): void {
    spot.here = turn;
    const lost = isPassing(fault);
    spot.lost = lost ? spot.lost + 1 : 0;
    stopTimer(spot);
    const told = !lost || spot.lost >= TOLD_AFTER || spot.shown.peek().problem !== null;
    show(spot, { problem: told ? asProblem(fault) : null, waiting: !told });
    if (!lost) return;
    spot.timer = setTimeout(
      () => {
        spot.timer = null;
        lookAgain(key, spot);
      },
      waitAfter(spot.lost, fault),
    );
  }

  /** Asks once more for what was lost, if someone looks at it; else when someone does. */
  function lookAgain(key: string, spot: Spot<T>): void {
    const seen = spot.looked && around.isSeen();
    if (seen && spot.lost > 0 && spot.underway === 0) void askFor(key, spot);
  }

  function show(spot: Spot<T>, change: Partial<Kept<T>>): void {
    spot.shown.value = { ...spot.shown.peek(), ...change };
  }

  around.onComingBack(() => {
    for (const [key, spot] of spots) lookAgain(key, spot);
  });

  return {
    at: (key) => wanted(key).shown,
    fresh: (key) => askFor(key, spotAt(key)),
    freshAll: () => {
      for (const [key, spot] of spots) {
        if (spot.underway > 0) spot.missed = true;
        else if (spot.asked > 0) void askFor(key, spot);
      }
    },
    put: (key, value) => {
      const spot = spotAt(key);
      stopTimer(spot);
      spot.asked += 1;
      // What is under way may have been asked because of something else that has changed.
      if (spot.underway > 0) spot.missed = true;
      land(spot, spot.asked, value);
    },
  };
}

function newSpot<T>(look: (on: boolean) => void): Spot<T> {
  const shown = signal<Kept<T>>(
    { value: null, problem: null, waiting: true },
    { watched: () => look(true), unwatched: () => look(false) },
  );
  return {
    shown,
    asked: 0,
    here: 0,
    underway: 0,
    missed: false,
    looked: false,
    lost: 0,
    timer: null,
  };
}

function stopTimer(spot: Pick<Spot<unknown>, 'timer'>): void {
  if (spot.timer !== null) clearTimeout(spot.timer);
  spot.timer = null;
}
