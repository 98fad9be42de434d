import type { FastifyBaseLogger, FastifyInstance, RawServerDefault } from 'fastify';
import type { ZodTypeProvider } from 'fastify-type-provider-zod';
import type { IncomingMessage, ServerResponse } from 'node:http';
import type { Desk } from '../photo-desk.ts';
import type { Store } from '../store/open-store.ts';
import type { Changes } from './changes.ts';

/** All that the service touches outside itself; a test hands in its own. */
export interface Edges {
  readonly store: Store;
  readonly desk: Desk;
  /** The time as ISO 8601 text. */
  readonly now: () => string;
  readonly newId: () => string;
  /** Tells who is looking that a pad has changed. */
  readonly changes: Changes;
  /** What it is doing while it starts; null when it is ready. */
  readonly doing: () => string | null;
  readonly version: string;
}

/** The service with routes that know their schemas. */
export type Service = FastifyInstance<
  RawServerDefault,
  IncomingMessage,
  ServerResponse,
  FastifyBaseLogger,
  ZodTypeProvider
>;
