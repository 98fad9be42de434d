import { afterEach, beforeEach, expect, it, vi } from 'vitest';

/** Of a browser: what it remembers, and who wants to hear that she is back. */
let memory: Map<string, string>;
let back: (() => void)[];

beforeEach(() => {
  memory = new Map();
  back = [];
  vi.useFakeTimers();
  vi.resetModules();
  const hear = (name: string, act: () => void): void => {
    if (name === 'online') back.push(act);
  };
  vi.stubGlobal('addEventListener', hear);
  vi.stubGlobal('window', globalThis);
  vi.stubGlobal('document', { addEventListener: hear, visibilityState: 'visible' });
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => memory.get(key) ?? null,
    setItem: (key: string, text: string) => memory.set(key, text),
  });
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** A service that answers ticks in turn by a status, then keeps them. */
function serviceThat(...turns: readonly number[]): { kept: Set<string>; asked: () => number } {
  const kept = new Set<string>();
  let asked = 0;
  vi.stubGlobal('fetch', (_address: string, { body }: { body: string }) => {
    const status = turns[asked] ?? 200;
    asked += 1;
    const { step } = JSON.parse(body) as { step: string };
    if (status === 200) kept.add(step);
    return Promise.resolve(new Response(JSON.stringify({ ticks: [...kept] }), { status }));
  });
  return { kept, asked: () => asked };
}

interface Ticked {
  readonly isTicked: (plan: string, step: string) => boolean;
  readonly tick: (plan: string, step: string, done: boolean) => void;
}

/** The page's own, new for each test. Its address is no literal, as the types of a browser are not here. */
async function ticked(): Promise<Ticked> {
  const address = new URL('../../web/guide/ticked.ts', import.meta.url).pathname;
  return (await import(/* @vite-ignore */ address)) as Ticked;
}

const unsent = (): unknown => JSON.parse(memory.get('plyhue:ticks-unsent') ?? '{}');

it.each([401, 403, 409, 500])(
  'a tick that is answered %d is kept, and sent when she is back',
  async (status) => {
    const { kept } = serviceThat(status);
    const { isTicked, tick } = await ticked();
    tick('plan', 'step', true);
    await vi.advanceTimersByTimeAsync(1000);
    expect(unsent()).toEqual({ plan: { step: true } });
    expect(isTicked('plan', 'step')).toBe(true);
    for (const act of back) act();
    await vi.advanceTimersByTimeAsync(1000);
    expect(unsent()).toEqual({});
    expect([...kept]).toEqual(['step']);
  },
);

it.each([400, 404, 410, 422])('a tick that is answered %d is let go', async (status) => {
  const { asked } = serviceThat(status);
  const { tick } = await ticked();
  tick('plan', 'step', true);
  await vi.advanceTimersByTimeAsync(60_000);
  expect(unsent()).toEqual({});
  expect(asked()).toBe(1);
});
