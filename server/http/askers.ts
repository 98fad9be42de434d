import { AsyncLocalStorage } from 'node:async_hooks';
import { isIP } from 'node:net';
import type { FastifyRequest } from 'fastify';
import type { Problem } from '../contract/values.ts';
import { HOUSE } from '../store/asker.ts';
import type { Asker } from '../store/asker.ts';
import type { Store } from '../store/open-store.ts';
import type { Service } from './edges.ts';
import { KEY_COOKIE, keyHolder } from './key-cookie.ts';
import { problem } from './problem.ts';
import { sendProblem } from './problems.ts';

declare module 'fastify' {
  interface FastifyRequest {
    /** Who asks; null where anyone may. */
    asker: Asker | null;
  }
  interface FastifyContextConfig {
    /** Answers without a key. */
    open?: true;
    /** Answers a phone too, which may look at one pad and add photos to it. */
    phone?: true;
  }
}

const asking = new AsyncLocalStorage<Asker>();

/** Who asks now. A route that is open to all has nobody, and the store refuses to answer it. */
export function askerNow(): Asker {
  const asker = asking.getStore();
  if (asker === undefined) throw new Error('The store was asked on behalf of nobody');
  return asker;
}

/** True when other devices can reach what listens there. */
export function isOnNetwork(host: string): boolean {
  return !(host === 'localhost' || host === '::1' || (isIP(host) === 4 && host.startsWith('127.')));
}

/**
 * Finds out who asks. On this computer alone it is the person of the house; on a network it is who holds the
 * key, and without one nothing of hers is told. Each route then runs for its asker, so that no route
 * can forget to ask whose a pad is: the store sees only what is the asker's.
 */
export function letIn(app: Service, store: Store, network: boolean): void {
  app.decorateRequest('asker', null);
  app.addHook('onRequest', async (request, reply) => {
    request.asker = network
      ? await keyHolder(store, request.cookies[KEY_COOKIE])
      : { person: HOUSE, pad: null };
    const fault = refused(request);
    if (fault !== null) return sendProblem(reply, fault);
    return undefined;
  });
  app.addHook('preHandler', (request, _reply, done) => {
    if (request.asker === null) done();
    else asking.run(request.asker, done);
  });
}

function refused({ asker, url, routeOptions }: FastifyRequest): Problem | null {
  if (routeOptions.config.open === true || !url.startsWith('/api/')) return null;
  if (asker === null)
    return problem('no-key', {
      detail: 'This computer is on a network and tells nothing to a device without a key.',
      mend: 'Open the address with a code that Plyhue printed when it started, or have it shown on a device that has a key.',
    });
  if (asker.pad !== null && routeOptions.config.phone !== true)
    return problem('beyond-key', {
      detail: 'The key of this phone is for looking at one pad and for adding photos to it.',
      mend: 'Do this on the computer, or give this device a key of its own there.',
    });
  return null;
}
