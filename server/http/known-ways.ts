import type { Service } from './edges.ts';

/** A method and the addresses that it works on. */
export interface KnownWay {
  readonly method: string;
  readonly pattern: RegExp;
}

/** Notes every route as it is added, so that a known address with a wrong method can say which are right. */
export function noteWays(app: Service): readonly KnownWay[] {
  const ways: KnownWay[] = [];
  app.addHook('onRoute', ({ method, url }) => {
    const steps = url.split('/').map((step) => (step.startsWith(':') ? '[^/]+' : escaped(step)));
    const pattern = new RegExp(`^${steps.join('/')}$`);
    for (const each of [method].flat()) ways.push({ method: each, pattern });
  });
  return ways;
}

export function waysTo(ways: readonly KnownWay[], url: string): string[] {
  const address = url.split('?')[0] ?? '';
  if (!address.startsWith('/api/')) return [];
  const methods = ways.filter(({ pattern }) => pattern.test(address)).map(({ method }) => method);
  return [...new Set(methods)].sort();
}

/** `:card.png` in a step is a name with an ending. */
function escaped(step: string): string {
  return step.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
