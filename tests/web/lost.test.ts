import { afterEach, beforeEach, describe, expect, it, test, vi } from 'vitest';
import { change } from '../../web/wire/change.ts';
import { Refused } from '../../web/wire/ask.ts';
import { isForGood } from '../../web/wire/lost.ts';
import { service } from '../../web/wire/service.ts';

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

/** A service that keeps what is set in a sheet, at each turn: as a status says, or when the test lets it answer. */
function keeperThat(...turns: readonly (number | 'waits')[]) {
  const kept: Record<string, unknown> = {};
  const tries: string[] = [];
  const waiting: (() => void)[] = [];
  vi.stubGlobal('fetch', async (_address: string, { body }: { body: string }) => {
    const turn = turns[tries.length] ?? 200;
    tries.push(body);
    if (turn === 'waits') await new Promise<void>((resolve) => waiting.push(resolve));
    const status = turn === 'waits' ? 200 : turn;
    if (status === 200) Object.assign(kept, JSON.parse(body));
    return new Response(status === 200 ? JSON.stringify(kept) : '{"detail":"said"}', { status });
  });
  const answer = (): void => waiting.shift()!();
  return { kept, tries, answer };
}

describe('changes of one thing', () => {
  const set = (body: object, at = 'a', how: 'PATCH' | 'PUT' = 'PATCH'): Promise<unknown> =>
    change(how, `/api/sheets/${at}`, body);

  it('end with the newest value where an older one was lost on its way, and that is not sent again', async () => {
    const { kept, tries } = keeperThat(503);
    const older = set({ label: 'old' });
    await vi.advanceTimersByTimeAsync(100);
    const newer = set({ label: 'new' });
    await vi.advanceTimersByTimeAsync(60_000);
    expect(await Promise.all([older, newer])).toEqual([{ label: 'new' }, { label: 'new' }]);
    expect(kept).toEqual({ label: 'new' });
    expect(tries).toEqual(['{"label":"old"}', '{"label":"new"}']);
  });

  it('wait for an older one that is still on its way', async () => {
    const { kept, tries, answer } = keeperThat('waits', 'waits');
    const both = Promise.all([set({ label: 'old' }), set({ label: 'new' })]);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(tries).toEqual(['{"label":"old"}']);
    answer();
    await vi.advanceTimersByTimeAsync(0);
    expect(tries).toHaveLength(2);
    answer();
    await both;
    expect(kept).toEqual({ label: 'new' });
  });

  it('of other fields lose nothing: the older is sent again before the newer', async () => {
    const { kept, tries } = keeperThat(503, 503);
    const both = Promise.all([set({ label: 'old', copies: 2 }), set({ label: 'new' })]);
    await vi.advanceTimersByTimeAsync(60_000);
    await both;
    expect(kept).toEqual({ label: 'new', copies: 2 });
    expect(tries.map((body) => body.includes('old'))).toEqual([true, true, true, false]);
  });

  it('of other things do not wait for each other', async () => {
    const { tries, answer } = keeperThat('waits');
    const one = set({ label: 'old' });
    await set({ label: 'new' }, 'b');
    expect(tries).toHaveLength(2);
    answer();
    await one;
  });

  it('tell of the older one what became of the newest, through several', async () => {
    const { kept } = keeperThat(503, 503, 400);
    const all = Promise.allSettled(
      ['one', 'two', 'three'].map((label) => set({ label }, 'a', 'PUT')),
    );
    await vi.advanceTimersByTimeAsync(60_000);
    for (const end of await all)
      expect(end).toMatchObject({ status: 'rejected', reason: { problem: { status: 400 } } });
    expect(kept).toEqual({});
    await set({ label: 'four' });
    expect(kept).toEqual({ label: 'four' });
  });

  it('go on after one that was refused, which alone is told of it', async () => {
    const { kept } = keeperThat(400);
    const [older, newer] = [set({ label: '' }), set({ label: 'new' })];
    await expect(older).rejects.toMatchObject({ problem: { status: 400 } });
    await newer;
    expect(kept).toEqual({ label: 'new' });
  });
});

describe('a code for a device', () => {
  it('is asked for once, for a second try would make a second one', async () => {
    const sent = serviceThat(503, 201);
    const asked = expect(service.newCode({ name: 'Phone' })).rejects.toMatchObject({
      problem: { status: 503 },
    });
    await vi.advanceTimersByTimeAsync(60_000);
    await asked;
    expect(sent).toHaveLength(1);
  });
});

// RFC 9110, 15.5: 400, 404, 410 and 422 speak of the question or of what it asks for; 401 and 403 of who asks, the
// others of the moment. 0 stands for no answer.
test.each([0, 401, 403, 408, 409, 413, 425, 429, 500, 502, 503, 504])(
  '%d may be otherwise later',
  (status) => {
    expect(isForGood(refused(status))).toBe(false);
  },
);

test.each([400, 404, 410, 422])('%d is for good', (status) => {
  expect(isForGood(refused(status))).toBe(true);
});

test('a fault of the page itself says nothing of the question', () => {
  expect(isForGood(new TypeError('no storage'))).toBe(false);
});

function refused(status: number): Refused {
  return new Refused({ type: 'about:blank', title: '', status, detail: `${status}` });
}
