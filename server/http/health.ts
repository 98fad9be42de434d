import { Health } from '../contract/health.ts';
import type { Edges, Service } from './edges.ts';

export function healthRoutes(app: Service, edges: Edges): void {
  app.get(
    '/api/health',
    {
      config: { open: true },
      schema: {
        summary: 'Whether the service lives and is ready; 503 while it starts or cannot work.',
        response: { 200: Health, 503: Health },
      },
    },
    async (_request, reply) => {
      const health = await healthOf(edges);
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
    () => healthOf(edges),
  );
}

async function healthOf({ store, doing, version }: Edges): Promise<Health> {
  const now = doing();
  const works = await store.answers();
  return {
    status: !works ? 'failing' : now === null ? 'ok' : 'starting',
    live: true,
    ready: works && now === null,
    version,
    ...(now === null ? {} : { doing: now }),
  };
}
