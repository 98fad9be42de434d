import { isIP } from 'node:net';
import { hostname } from 'node:os';
import type { FastifyRequest } from 'fastify';
import type { Problem } from '../contract/values.ts';
import type { Service } from './edges.ts';
import { problem } from './problem.ts';
import { sendProblem } from './problems.ts';

/**
 * Answers only those who ask by a name of this computer, and only its own pages.
 *
 * A page elsewhere that points its own name at this computer (DNS rebinding) sends that name as the
 * host; a page elsewhere that posts here sends its own origin. Both are refused. An address in figures
 * cannot be re-pointed, so it is always good.
 */
export function guardDoor(app: Service, host: string): void {
  const own = new Set(
    ['localhost', host, hostname(), `${hostname()}.local`].map((name) => name.toLowerCase()),
  );
  app.addHook('onRequest', (request, reply, done) => {
    const fault = foreignHost(request, own) ?? foreignPage(request);
    if (fault === null) done();
    else void sendProblem(reply, fault);
  });
}

function foreignHost(request: FastifyRequest, own: ReadonlySet<string>): Problem | null {
  const name = nameIn(request.headers.host ?? '');
  if (name !== null && (own.has(name) || isIP(name) !== 0)) return null;
  return problem('foreign-host', {
    detail: 'Expected this computer’s own name or address as the host.',
    field: 'host',
    received: (request.headers.host ?? '').slice(0, 120),
    mend: 'Open the address that Plyhue printed when it started.',
  });
}

function foreignPage(request: FastifyRequest): Problem | null {
  if (request.method === 'GET' || request.method === 'HEAD') return null;
  const { origin, host } = request.headers;
  const from = request.headers['sec-fetch-site'];
  const other = from !== undefined && from !== 'same-origin' && from !== 'none';
  if (!other && (origin === undefined || originHost(origin) === host?.toLowerCase())) return null;
  return problem('foreign-page', {
    detail: 'Only Plyhue’s own page may change things here.',
    field: 'origin',
    received: String(origin ?? from).slice(0, 120),
    mend: 'Open the address that Plyhue printed when it started, and do it there.',
  });
}

function originHost(origin: string): string | null {
  try {
    return new URL(origin).host;
  } catch {
    return null;
  }
}

/** The name in a Host header, without port; null when it is none. */
function nameIn(host: string): string | null {
  const parts = /^(?:\[([0-9a-f:.]+)\]|([a-z0-9._-]+))(?::\d{1,5})?$/i.exec(host);
  return (parts?.[1] ?? parts?.[2])?.toLowerCase() ?? null;
}
