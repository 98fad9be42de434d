import type { Problem } from '../../server/contract/values.ts';
import { goesPastWorker, noteGone, noteGot } from '../offline/got.ts';
import { mishapWords } from '../words/mishap.ts';

/** What the service said when it could not do what was asked, in words for her. */
export class Refused extends Error {
  override readonly name = 'Refused';
  readonly problem: Problem;
  /** How long the service asks to wait before the next try (RFC 9110, Retry-After), in milliseconds; 0 where it does not say. */
  readonly after: number;

  constructor(problem: Problem, after = 0) {
    super(problem.detail);
    this.problem = problem;
    this.after = after;
  }
}

/** Asks the service for a value, once; throws Refused with a problem in plain words. `signal` takes the question back. */
export async function ask<T>(
  method: string,
  address: string,
  body?: unknown,
  signal: AbortSignal | null = null,
  headers: Readonly<Record<string, string>> = {},
): Promise<T> {
  const answer = await send(method, address, body, signal, headers);
  if (answer.status === 204) return undefined as T;
  return (await answer.json().catch(() => Promise.reject(unreadable()))) as T;
}

/** Sends the bytes or the text of a file of a kind, such as a list, and asks for the value they make. */
export async function askWithFile<T>(
  address: string,
  file: Blob | string,
  kind: string,
): Promise<T> {
  const answer = await sent(address, {
    method: 'POST',
    body: file,
    headers: { 'content-type': kind },
  });
  return (await answer.json().catch(() => Promise.reject(unreadable()))) as T;
}

/** Asks for something that is no value, such as a picture. */
export async function askFile(address: string): Promise<Blob> {
  const answer = await sent(address, {});
  return answer.blob().catch(() => Promise.reject(unreadable()));
}

/**
 * Asks whether a file can be had, without its being made: of a download that is refused a browser tells no reason.
 * The answer to HEAD has no room for one either (RFC 9110, 9.3.2), so what is refused is asked for once more.
 */
export async function askWhether(address: string): Promise<void> {
  const answer = await fetch(address, { method: 'HEAD' }).catch(() =>
    Promise.reject(unreachable()),
  );
  if (answer.ok) return;
  const stop = new AbortController();
  await sent(address, { signal: stop.signal });
  stop.abort();
}

function send(
  method: string,
  address: string,
  body: unknown,
  signal: AbortSignal | null,
  headers: Readonly<Record<string, string>>,
): Promise<Response> {
  if (body === undefined) return sent(address, { method, signal, headers });
  const wrapped = wrappedUp(body);
  return sent(address, { method, signal, ...wrapped, headers: { ...wrapped.headers, ...headers } });
}

async function sent(address: string, how: RequestInit): Promise<Response> {
  const { method = 'GET' } = how;
  const isEarly = method === 'GET' && goesPastWorker();
  const answer = await fetch(address, how).catch(() => Promise.reject(unreachable()));
  if (!answer.ok) throw new Refused(await problemOf(answer), waitIn(answer));
  if (isEarly) noteGot(address);
  if (method === 'DELETE') noteGone(address);
  return answer;
}

/** In milliseconds. A date in its place is not read: our service sends seconds. */
function waitIn(answer: Response): number {
  const seconds = Number(answer.headers.get('retry-after') ?? 0);
  return Number.isFinite(seconds) ? Math.max(0, seconds) * 1000 : 0;
}

function wrappedUp(body: unknown): {
  body: NonNullable<RequestInit['body']>;
  headers?: Record<string, string>;
} {
  if (body instanceof FormData) return { body };
  return { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } };
}

async function problemOf(answer: Response): Promise<Problem> {
  const text = await answer.text().catch(() => '');
  return problemFrom(answer.status, text);
}

/** Reads problem details out of an answer that may not hold any. */
export function problemFrom(status: number, text: string): Problem {
  try {
    const problem = JSON.parse(text) as Partial<Problem>;
    if (typeof problem.detail === 'string') return { ...blank(status), ...problem };
  } catch {
    // An answer from something else than the service (a proxy, a restart) has no problem details.
  }
  return blank(status);
}

function blank(status: number): Problem {
  return {
    type: 'about:blank',
    title: mishapWords.title,
    status,
    detail: mishapWords.unknown(status),
    mend: mishapWords.tryAgain,
  };
}

/** The refusal that stands for a service that does not answer. */
export function unreachable(): Refused {
  return new Refused({
    ...blank(0),
    detail: mishapWords.unreachable,
    mend: mishapWords.unreachableMend,
  });
}

function unreadable(): Refused {
  return new Refused({ ...blank(0), detail: mishapWords.unreadable });
}

/** Any fault as problem details, so that every place can show it the same way. */
export function asProblem(fault: unknown): Problem {
  if (fault instanceof Refused) return fault.problem;
  return { ...blank(0), detail: fault instanceof Error ? fault.message : String(fault) };
}
