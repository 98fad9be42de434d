/** The service without a port: `buildApp(edges)` is what main.ts listens with and what tests mount. */
import cookie from '@fastify/cookie';
import multipart from '@fastify/multipart';
import Fastify from 'fastify';
import type { FastifyServerOptions } from 'fastify';
import { validatorCompiler } from 'fastify-type-provider-zod';
import { answerChecked } from './http/answer-checked.ts';
import { askerNow, isOnNetwork, letIn } from './http/askers.ts';
import type { Edges, Service } from './http/edges.ts';
import { eventRoutes } from './http/events.ts';
import { spareKnown } from './http/fresh.ts';
import { guardDoor } from './http/guard.ts';
import { healthRoutes } from './http/health.ts';
import { metricRoutes } from './http/metrics.ts';
import { noteWays } from './http/known-ways.ts';
import { keyRoutes } from './http/keys.ts';
import { layoutRoutes } from './http/layouts.ts';
import { matchRoutes } from './http/matches.ts';
import { bestSupplyRoutes } from './http/best-supplies.ts';
import { describeApi } from './http/openapi.ts';
import { classSetRoutes } from './http/class-sets.ts';
import { leftoverRoutes } from './http/leftovers.ts';
import { padFileRoutes } from './http/pad-files.ts';
import { padRoutes } from './http/pads.ts';
import { servePage } from './http/page.ts';
import { photoRoutes } from './http/photos.ts';
import { guidePartsRoutes } from './http/guide-parts.ts';
import { guideRoutes } from './http/guides.ts';
import { layerChoiceRoutes } from './http/layer-choices.ts';
import { planAgainRoutes } from './http/plan-again.ts';
import { planRoutes } from './http/plans.ts';
import { problemOf } from './http/problem-of.ts';
import { answerWithProblems, sendProblem } from './http/problems.ts';
import { secure } from './http/security.ts';
import { sheetRoutes } from './http/sheets.ts';
import { sideRoutes } from './http/sides.ts';
import { uploadRoutes } from './http/uploads.ts';
import { supplyRoutes } from './http/supplies.ts';

export interface AppOptions {
  /** The name or address that it listens on. */
  readonly host: string;
  /** Folder of the built page. */
  readonly page: string;
  readonly logger?: FastifyServerOptions['logger'];
}

const MEGABYTE = 2 ** 20;

export async function buildApp(whole: Edges, options: AppOptions): Promise<Service> {
  const { store } = whole;
  const network = isOnNetwork(options.host);
  const edges: Edges = { ...whole, store: { ...store, ...store.askedBy(askerNow) } };
  const app: Service = Fastify({
    logger: options.logger ?? false,
    bodyLimit: MEGABYTE,
    // A photo may come over a slow wireless network; a question that never ends is ended.
    requestTimeout: 180_000,
    connectionTimeout: 0,
    forceCloseConnections: 'idle',
    // As long as Node takes an address: what is too long for an id is not found, as any other that is none.
    routerOptions: { maxParamLength: 16_384 },
    frameworkErrors: (fault, request, reply) => {
      void sendProblem(reply, problemOf(fault, request.url));
    },
  })
    .setValidatorCompiler(validatorCompiler)
    .setSerializerCompiler(answerChecked);

  const ways = noteWays(app);
  guardDoor(app, options.host);
  spareKnown(app);
  await app.register(cookie);
  letIn(app, store, network);
  await secure(app);
  await app.register(multipart, {
    limits: { fileSize: 40 * MEGABYTE, files: 4, fields: 70, fieldSize: 4096, headerPairs: 40 },
    throwFileSizeLimit: false,
  });
  await describeApi(app, edges.version);
  answerWithProblems(app, ways);
  metricRoutes(app, edges);
  keyRoutes(app, edges, network);
  healthRoutes(app, edges);
  padRoutes(app, edges);
  padFileRoutes(app, edges);
  eventRoutes(app, edges);
  photoRoutes(app, edges);
  uploadRoutes(app, edges);
  sideRoutes(app, edges);
  sheetRoutes(app, edges);
  supplyRoutes(app, edges);
  matchRoutes(app, edges);
  bestSupplyRoutes(app, edges);
  layoutRoutes(app, edges);
  planRoutes(app, edges);
  planAgainRoutes(app, edges);
  layerChoiceRoutes(app, edges);
  guideRoutes(app, edges);
  classSetRoutes(app, edges);
  leftoverRoutes(app, edges);
  guidePartsRoutes(app, edges);
  await servePage(app, options.page);
  return app;
}
