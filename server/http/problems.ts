import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Problem } from '../contract/values.ts';
import type { Service } from './edges.ts';
import { KINDS } from './problem-kinds.ts';
import { problemOf } from './problem-of.ts';
import { problem } from './problem.ts';
import { waysTo } from './known-ways.ts';
import type { KnownWay } from './known-ways.ts';

/** Every answer that is not what was asked for is a problem detail, whoever refused. */
export function answerWithProblems(app: Service, ways: readonly KnownWay[]): void {
  app.setErrorHandler((fault, request, reply) => {
    const says = problemOf(fault, askedBy(fault, request));
    if (says.status >= 500 && says.status !== 503)
      request.log.error({ err: fault }, 'a question could not be answered');
    return sendProblem(reply, says);
  });
  app.setNotFoundHandler((request, reply) => {
    const allowed = waysTo(ways, request.url);
    if (allowed.length === 0) return sendProblem(reply, nothingHere(request.url));
    void reply.header('allow', allowed.join(', '));
    return sendProblem(
      reply,
      problem('no-such-way', {
        detail: `Expected ${allowed.join(' or ')} for this address but received ${request.method}.`,
        field: 'method',
        received: request.method,
        mend: `Use ${allowed.join(' or ')}.`,
      }),
    );
  });
  for (const [kind, { title, status }] of Object.entries(KINDS))
    app.get(`/problems/${kind}`, { schema: { hide: true } }, (_request, reply) =>
      reply.type('text/plain; charset=utf-8').send(`${title} (${status})\n`),
    );
}

export function sendProblem(reply: FastifyReply, says: Problem): FastifyReply {
  if (says.status === 503) void reply.header('retry-after', '5');
  return reply
    .code(says.status)
    .type('application/problem+json')
    .serializer(JSON.stringify)
    .send(says);
}

function nothingHere(address: string): Problem {
  return problem('not-found', {
    detail: 'Nothing answers to this address.',
    field: 'address',
    received: address.slice(0, 120),
    mend: 'Check the address; /api/openapi.json lists all that there are.',
  });
}

/** The part of the request that a schema looked at when it refused. */
function askedBy(fault: unknown, request: FastifyRequest): unknown {
  const context =
    typeof fault === 'object' && fault !== null && 'validationContext' in fault
      ? fault.validationContext
      : 'body';
  if (context === 'params') return request.params;
  if (context === 'querystring') return request.query;
  if (context === 'headers') return request.headers;
  return request.body;
}
