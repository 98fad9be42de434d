import { createHash } from 'node:crypto';
import type { FastifyRequest } from 'fastify';
import type { Records } from '../store/records.ts';
import { Spoken, problem } from './problem.ts';

/** A question that may come twice: its key, and a fingerprint of what it asks. Null when it carries no key. */
export interface KeyedQuestion {
  readonly key: string;
  readonly fingerprint: string;
}

/** Reads the `Idempotency-Key` of a request; `asked` is all that matters of its body. */
export function keyOf(request: FastifyRequest, asked: unknown): KeyedQuestion | null {
  const sent = request.headers['idempotency-key'];
  if (sent === undefined) return null;
  const key = String(sent);
  if (key === '' || key.length > 200)
    throw new Spoken(
      problem('not-understood', {
        detail: 'Expected an Idempotency-Key of 1 to 200 characters.',
        field: 'idempotency-key',
        mend: 'Send a new random word with each new wish, and the same word when you repeat one.',
      }),
    );
  const way = `${request.method} ${request.url}`;
  const fingerprint = createHash('sha256')
    .update(JSON.stringify([way, asked]))
    .digest('hex');
  return { key, fingerprint };
}

/** What the same question has made before, as ids; null when it is new. Refuses a key used for another question. */
export async function madeBefore(
  records: Records,
  question: KeyedQuestion | null,
): Promise<readonly string[] | null> {
  if (question === null) return null;
  const before = await records.requests.at(question.key);
  if (before === null) return null;
  if (before.fingerprint === question.fingerprint) return before.made;
  throw new Spoken(
    problem('used-key', {
      detail: 'This Idempotency-Key was already used for another question.',
      field: 'idempotency-key',
      received: question.key.slice(0, 120),
      mend: 'Send a new random word with each new wish.',
    }),
  );
}

/**
 * Makes something once: within the transaction that makes it, the key is looked up and noted, so that the
 * same question asked again, even at the same moment or after a crash, gives what the first one made.
 */
export async function makeOnce(
  records: Records,
  question: KeyedQuestion | null,
  createdAt: string,
  make: () => Promise<readonly string[]>,
): Promise<readonly string[]> {
  const before = await madeBefore(records, question);
  if (before !== null) return before;
  const made = await make();
  if (question !== null) await records.requests.add({ ...question, made, createdAt });
  return made;
}
