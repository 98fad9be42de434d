import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Service } from './edges.ts';
import { Spoken, problem } from './problem.ts';

function stale(sent: string, now: number): Spoken {
  return new Spoken(
    problem('stale', {
      detail: `This was changed in the meantime: you saw ${sent.slice(0, 60)}, now it is "${now}".`,
      field: 'if-match',
      received: sent.slice(0, 120),
      mend: 'Look at it again, then make your change.',
    }),
  );
}

/** Refuses a change that carries an If-Match of an older revision. */
export function holdFresh(request: FastifyRequest, revision: number): void {
  const sent = request.headers['if-match'];
  if (sent === undefined || sent.trim() === '*') return;
  const tags = sent.split(',').map((tag) => tag.trim());
  if (!tags.includes(etag(revision))) throw stale(sent, revision);
}

/** States the revision of what is answered, as a strong entity tag. */
export function stateRevision(reply: FastifyReply, revision: number): void {
  void reply.header('etag', etag(revision));
}

/** Answers 304 (RFC 9110, If-None-Match) when the asker already has the revision that an answer states. */
export function spareKnown(app: Service): void {
  app.addHook('onSend', (request, reply, payload, done) => {
    const known = reply.getHeader('etag');
    const sent = request.headers['if-none-match'];
    const tags = sent?.split(',').map((tag) => tag.trim().replace(/^W\//, '')) ?? [];
    if (reply.statusCode !== 200 || known === undefined || !tags.includes(String(known))) {
      done(null, payload);
      return;
    }
    void reply.code(304).removeHeader('content-length');
    done(null, null);
  });
}

function etag(revision: number): string {
  return `"${revision}"`;
}
