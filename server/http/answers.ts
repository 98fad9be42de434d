import { z } from 'zod';
import { Problem } from '../contract/values.ts';

const refusal = {
  description: 'A problem in words, with the mend.',
  content: { 'application/problem+json': { schema: Problem } },
};

/** The answers of a route for its document: what it gives, and problems. */
export function answers<Given extends Record<number, unknown>>(
  given: Given,
): Given & { readonly '4xx': typeof refusal; readonly '5xx': typeof refusal } {
  return { ...given, '4xx': refusal, '5xx': refusal };
}

/** An answer that is a file of a kind. */
export function fileAnswer(kind: string, description: string): object {
  return { description, content: { [kind]: { schema: z.string() } } };
}

/** Nothing to say: 204. */
export const NOTHING = z.undefined().describe('Done.');
