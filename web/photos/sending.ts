import { signal } from '@preact/signals';
import type { PhotoAnswer } from '../../server/contract/pads.ts';
import type { Problem } from '../../server/contract/values.ts';
import type { LaidBy } from './laid-by.ts';
import type { Berth } from './tablefuls.ts';

/** A photo on its way to the service. */
export interface Sending {
  readonly id: number;
  /** The name under which it is kept on this device. */
  readonly key: string;
  readonly pad: string;
  readonly berth: Berth;
  readonly name: string;
  readonly file: Blob;
  /** A small picture of it, or null when the browser cannot open its format. */
  readonly thumbnail: string | null;
  readonly state: 'waiting' | 'sending' | 'reading' | 'found' | 'refused';
  /** Share sent, in [0, 1]. */
  readonly sent: number;
  /** All of it may have been sent, now or before, so that the service may have it. */
  readonly whole: boolean;
  readonly found: number;
  /** Its id, once the service has it. */
  readonly photo: string | null;
  readonly problem: Problem | null;
}

/** All photos that are not yet in, over all pads, in the order in which they will be sent. */
export const sendings = signal<readonly Sending[]>([]);

let lastId = 0;

export function newSending(laid: Omit<LaidBy, 'unwanted'>): Sending {
  const { key, pad, berth, file, name, whole } = laid;
  lastId += 1;
  return {
    id: lastId,
    key,
    pad,
    berth,
    file,
    name,
    whole,
    thumbnail: null,
    state: 'waiting',
    sent: 0,
    found: 0,
    photo: null,
    problem: null,
  };
}

/** Answers that another try may mend: asked too slowly, or too often. */
const PASSING = [408, 429];

/** Whether a photo keeps its place on a table: all do but those that the service has refused for good. */
export function holdsPlace({ state, problem }: Sending): boolean {
  return state !== 'refused' || problem === null || !isForGood(problem);
}

/** Whether the same photo would be refused again. */
export function isForGood({ status }: Problem): boolean {
  return status >= 400 && status < 500 && !PASSING.includes(status);
}

/** The photo as it is on its way now; undefined once it is in or taken away. */
export function sendingAt(id: number): Sending | undefined {
  return sendings.peek().find((one) => one.id === id);
}

export function change(id: number, to: Partial<Sending>): void {
  sendings.value = sendings.peek().map((one) => (one.id === id ? { ...one, ...to } : one));
}

export function drop(id: number): void {
  sendings.value = sendings.peek().filter((one) => one.id !== id);
}

export function foundIn(answer: PhotoAnswer): Partial<Sending> {
  const { photo, sides } = answer;
  return { state: 'found', found: sides.length, photo: photo.id, sent: 1, problem: null };
}
