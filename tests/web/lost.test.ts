import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { change } from '../../web/wire/change.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

interface Sent {
  readonly method: string;
  readonly word: string | undefined;
}

/** A service that answers in turn: a status, or null where the answer is lost. */
function serviceThat(...turns: readonly (number | null)[]): Sent[] {
  const sent: Sent[] = [];
  vi.stubGlobal('fetch', (_address: string, how: RequestInit) => {
    const headers = (how.headers ?? {}) as Record<string, string>;
    const status = turns[sent.length] ?? 500;
    sent.push({ method: how.method ?? '', word: headers['idempotency-key'] });
    if (turns[sent.length - 1] === null) return Promise.reject(new TypeError('lost'));
    const more = { status, headers: { 'retry-after': status === 503 ? '5' : '0' } };
    return Promise.resolve(new Response(status === 204 ? null : '{"detail":"said"}', more));
  });
  return sent;
}

describe('a change whose answer is lost', () => {
  it('is sent again with the same word, so that it is made once', async () => {
    const sent = serviceThat(null, null, 201);
    const made = change('POST', '/api/plans', {});
    await vi.advanceTimersByTimeAsync(1500);
    await made;
    expect(sent).toHaveLength(3);
    expect(sent[0]!.word).toMatch(/^[0-9a-f]{32}$/);
    expect(new Set(sent.map(({ word }) => word)).size).toBe(1);
    const other = serviceThat(201);
    await change('POST', '/api/plans', {});
    expect(other[0]!.word).not.toBe(sent[0]!.word);
  });

  it('waits as long as a busy service asks', async () => {
    const sent = serviceThat(503, 200);
    const made = change('PATCH', '/api/sheets/a', {});
    await vi.advanceTimersByTimeAsync(4999);
    expect(sent).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(1);
    await made;
    expect(sent).toHaveLength(2);
  });

  it('takes what is gone at the second try for taken away, but not at the first', async () => {
    serviceThat(null, 404);
    const gone = change('DELETE', '/api/photos/a');
    await vi.advanceTimersByTimeAsync(500);
    await gone;
    serviceThat(404);
    await expect(change('DELETE', '/api/photos/a')).rejects.toMatchObject({ message: 'said' });
  });

  it('is told after four tries, and at once when it was refused', async () => {
    const sent = serviceThat(null, null, null, null);
    const lost = expect(change('POST', '/api/plans', {})).rejects.toMatchObject({
      problem: { status: 0 },
    });
    await vi.advanceTimersByTimeAsync(3500);
    await lost;
    expect(sent).toHaveLength(4);
    const refused = serviceThat(409);
    await expect(change('POST', '/api/plans', {})).rejects.toMatchObject({
      problem: { status: 409 },
    });
    expect(refused).toHaveLength(1);
  });
});
