import { ask, Refused } from './ask.ts';
import { inLine } from './in-line.ts';
import { untilAnswered } from './lost.ts';

/**
 * Asks the service to change something, and asks again when the question or its answer is lost, without the
 * thing being done twice: what makes something carries a word of its own (Idempotency-Key) by which the service
 * knows it again, and the rest leads to the same end however often it is done. What sets something (PUT, PATCH)
 * stands in line with what sets it at the same address, so that the last one wished is the last to arrive.
 *
 * Takes       of what makes something the word, where two windows may well ask for the same.
 * Throws      Refused, like `ask`, with what the last try ended in.
 */
export function change<T>(
  method: 'POST' | 'PUT' | 'PATCH' | 'DELETE',
  address: string,
  body?: unknown,
  signal: AbortSignal | null = null,
  word = newWord(),
): Promise<T> {
  const headers = method === 'POST' ? { 'idempotency-key': word } : {};
  const send = async (again: boolean): Promise<T> => {
    try {
      return await ask<T>(method, address, body, signal, headers);
    } catch (fault) {
      // Its first try had arrived: it is gone, as was wished.
      if (again && method === 'DELETE' && isGone(fault)) return undefined as T;
      throw fault;
    }
  };
  if (method !== 'PUT' && method !== 'PATCH') return untilAnswered(send, signal);
  const fields = method === 'PUT' ? null : Object.keys(body ?? {});
  return inLine(address, fields, (overtaken) => untilAnswered(send, signal, overtaken));
}

function isGone(fault: unknown): boolean {
  return fault instanceof Refused && fault.problem.status === 404;
}

/** 128 bits at random. Not randomUUID, which a page without https does not have. */
function newWord(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
