import { Health } from '../contract/health.ts';
import { tryWrite } from '../store/try-write.ts';
import type { Edges, Service } from './edges.ts';
import { problemOfStorage } from './problem-of-storage.ts';

/** Whoever asks all the time has the same answer for so long, in milliseconds: a disk is not worn by being asked after. */
const HOLDS = 5000;

export function healthRoutes(app: Service, edges: Edges): void {
  const hindrance = heldFor(HOLDS, () => hindranceOf(edges));

  app.get(
    '/api/health',
    {
      config: { open: true },
      schema: {
        summary:
          'Whether the service lives and is ready; 503 while it starts, cannot work or cannot save.',
        response: { 200: Health, 503: Health },
      },
    },
    async (_request, reply) => {
      const health = await healthOf(edges, await hindrance());
      return reply
        .code(health.ready ? 200 : 503)
        .header('cache-control', 'no-store')
        .send(health);
    },
  );

  app.get(
    '/api/health/live',
    {
      config: { open: true },
      schema: { summary: 'Whether the process answers.', response: { 200: Health } },
    },
    // A disk that hangs must not hold up this answer.
    () => healthOf(edges, null),
  );
}

async function healthOf(
  { store, doing, version }: Edges,
  hinders: Health['cannotSave'] | null,
): Promise<Health> {
  const now = doing();
  const works = (await store.answers()) && hinders === null;
  return {
    status: !works ? 'failing' : now === null ? 'ok' : 'starting',
    live: true,
    ready: works && now === null,
    version,
    ...(hinders === null ? {} : { cannotSave: hinders }),
    ...(now === null ? {} : { doing: now }),
  };
}

/** Why nothing can be saved, found by saving a little; null when it can. */
async function hindranceOf({ store }: Edges): Promise<Health['cannotSave'] | null> {
  const fault = await tryWrite(store.files);
  if (fault === null) return null;
  const kind = problemOfStorage(fault)?.type.split('/').at(-1);
  return kind === 'disk-full' ? kind : 'cannot-write';
}

/** Asks at most once in so many milliseconds; in between, and for all who ask at once, the last answer holds. */
function heldFor<T>(milliseconds: number, ask: () => Promise<T>): () => Promise<T> {
  let asked = -Infinity;
  let answer: Promise<T> | null = null;
  return () => {
    const now = performance.now();
    if (answer !== null && now - asked < milliseconds) return answer;
    asked = now;
    return (answer = ask());
  };
}
