import { Gauge, Histogram, Registry, collectDefaultMetrics } from 'prom-client';
import type { Edges, Service } from './edges.ts';

/**
 * Figures for whoever looks after the service, in the Prometheus text format at `/api/metrics`:
 * how long the answers take by route and status, what waits for the workers, and the process itself.
 * Routes are named by their pattern, so that no pad and no person shows in them.
 */
export function metricRoutes(app: Service, { desk }: Edges): void {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  const answers = new Histogram({
    name: 'plyhue_answer_seconds',
    help: 'Seconds from a question to the end of its answer.',
    labelNames: ['method', 'route', 'status'] as const,
    buckets: [0.005, 0.02, 0.1, 0.5, 2, 8, 30],
    registers: [registry],
  });
  new Gauge({
    name: 'plyhue_work_under_way',
    help: 'Photos, plans or prints, groupings or guides that the workers are at or that wait for them.',
    labelNames: ['kind'] as const,
    registers: [registry],
    collect() {
      const { photos, table, clerk } = desk.load();
      this.set({ kind: 'photo' }, photos);
      this.set({ kind: 'plan or print' }, table);
      this.set({ kind: 'grouping or guide' }, clerk);
    },
  });

  app.addHook('onResponse', (request, reply, done) => {
    const { method, routeOptions } = request;
    const route = routeOptions.url ?? 'none';
    answers.observe({ method, route, status: reply.statusCode }, reply.elapsedTime / 1000);
    done();
  });

  app.get('/api/metrics', { schema: { hide: true } }, async (_request, reply) =>
    reply
      .type(registry.contentType)
      .header('cache-control', 'no-store')
      .serializer((sent: string) => sent)
      .send(await registry.metrics()),
  );
  app.addHook('onClose', (_app, done) => {
    registry.clear();
    done();
  });
}
