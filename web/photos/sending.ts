import { signal } from '@preact/signals';
import type { PhotoAnswer } from '../../server/contract/pads.ts';
import type { Problem } from '../../server/contract/values.ts';
import type { Berth } from './tablefuls.ts';

/** A photo on its way to the service. */
export interface Sending {
  readonly id: number;
  readonly pad: string;
  readonly berth: Berth;
  readonly name: string;
  readonly file: Blob;
  /** A small picture of it, or null when the browser cannot open its format. */
  readonly thumbnail: string | null;
  readonly state: 'waiting' | 'sending' | 'reading' | 'found' | 'refused';
  /** Share sent, in [0, 1]. */
  readonly sent: number;
  readonly found: number;
  /** Its id, once the service has it. */
  readonly photo: string | null;
  readonly problem: Problem | null;
}

/** All photos that are not yet in, over all pads, in the order in which they will be sent. */
export const sendings = signal<readonly Sending[]>([]);

let lastId = 0;

export function newSending(pad: string, berth: Berth, file: Blob, name: string): Sending {
  lastId += 1;
  return {
    id: lastId,
    pad,
    berth,
    file,
    name,
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
  if (state !== 'refused' || problem === null) return true;
  return problem.status < 400 || problem.status >= 500 || PASSING.includes(problem.status);
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
