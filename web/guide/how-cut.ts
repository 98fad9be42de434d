import { remembered } from '../table/memory.ts';

/** As many as the service takes. */
export const MOST_PEOPLE = 60;
export const MOST_STACKED = 8;

/** Sheets that lie under the blade at once: three is common practice for patterned paper, no source. */
export const stacked = remembered<number>('stacked', 3, (value): value is number =>
  wholeUpTo(value, MOST_STACKED),
);

/** For how many people a plan is cut: plan id to people; one where it is not named. */
const people = remembered<Record<string, number>>('people', {}, isCounts);

export function peopleFor(plan: string): number {
  return people.value[plan] ?? 1;
}

export function setPeople(plan: string, count: number): void {
  people.value = { ...people.peek(), [plan]: count };
}

function isCounts(value: unknown): value is Record<string, number> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  return Object.values(value).every((count) => wholeUpTo(count, MOST_PEOPLE));
}

function wholeUpTo(value: unknown, most: number): value is number {
  return Number.isInteger(value) && (value as number) >= 1 && (value as number) <= most;
}
