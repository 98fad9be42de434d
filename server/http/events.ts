import type { ServerResponse } from 'node:http';
import { z } from 'zod';
import { expected } from '../refusals/refusal.ts';
import { answers, fileAnswer } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { found } from './found.ts';

/** More windows than this are told to look again by themselves. */
const MOST_WATCHING = 200;
const HEARTBEAT = 25_000;

/** Tells open windows when a pad has changed, as server-sent events (WHATWG HTML, section 9.2). */
export function eventRoutes(app: Service, edges: Edges): void {
  const { store, changes } = edges;
  const open = new Set<ServerResponse>();
  app.addHook('preClose', (done) => {
    for (const stream of open) stream.end();
    done();
  });

  app.get(
    '/api/pads/:pad/events',
    {
      config: { phone: true },
      schema: {
        summary: 'Tells each change of a pad: `event: changed` with its revision.',
        params: z.object({ pad: z.string() }),
        response: answers({ 200: fileAnswer('text/event-stream', 'Server-sent events.') }),
      },
    },
    async (request, reply) => {
      const { pad: id } = request.params;
      const pad = found(await store.read.pads.at(id), 'pad', id);
      if (changes.watching() >= MOST_WATCHING) throw tooManyWatching();
      for (const [name, value] of Object.entries(reply.getHeaders()))
        if (value !== undefined) reply.raw.setHeader(name, value);
      reply.hijack();
      const stream = reply.raw;
      stream.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store' });
      open.add(stream);
      const tell = (revision: number | null): void =>
        void stream.write(`event: changed\ndata: ${JSON.stringify({ pad: id, revision })}\n\n`);
      tell(pad.revision);
      const stop = changes.watch(id, () => {
        store.read.pads.at(id).then(
          (now) => tell(now?.revision ?? null),
          () => stream.end(),
        );
      });
      const heart = setInterval(() => stream.write(': still here\n\n'), HEARTBEAT);
      stream.on('close', () => {
        clearInterval(heart);
        stop();
        open.delete(stream);
      });
    },
  );
}

function tooManyWatching(): Error {
  return expected(
    `at most ${MOST_WATCHING} windows that watch`,
    'pad',
    MOST_WATCHING,
    'Close some windows; this one still works and shows changes when it is loaded again.',
    'busy',
  );
}
