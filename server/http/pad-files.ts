import { z } from 'zod';
import * as Wire from '../contract/pads.ts';
import { expected } from '../refusals/refusal.ts';
import { answers, fileAnswer } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { takePadFile } from './bring-pad.ts';
import { padAsFile, padToSave } from './save-pad.ts';
import { LABOUR } from './security.ts';

const TAR = 'application/x-tar';

/** Moving a pad to another computer: saved as one file here, brought as one file there. */
export function padFileRoutes(app: Service, edges: Edges): void {
  // The file is not gathered in memory: its bytes are handed on as they come.
  app.addContentTypeParser(TAR, (_request, payload, done) => done(null, payload));

  app.head(
    '/api/pads/:pad/file',
    {
      config: LABOUR,
      schema: {
        summary: 'Whether a pad can be saved as one file; nothing is packed.',
        params: z.object({ pad: z.string() }),
        response: answers({ 200: fileAnswer(TAR, 'Nothing: the file itself is had by GET.') }),
      },
    },
    async (request, reply) => {
      await padToSave(edges, request.params.pad);
      return reply.type(TAR).send();
    },
  );

  app.get(
    '/api/pads/:pad/file',
    {
      config: LABOUR,
      schema: {
        summary: 'A pad with its photos, swatches and plans as one file, for another computer.',
        params: z.object({ pad: z.string() }),
        response: answers({ 200: fileAnswer(TAR, 'A tar archive.') }),
      },
    },
    async (request, reply) => {
      const file = await padAsFile(edges, request.params.pad);
      // Without a name for the file, so that the page gives it that of the pad.
      return reply
        .type(TAR)
        .header('content-disposition', 'attachment')
        .serializer((sent: string) => sent)
        .send(file);
    },
  );

  app.post(
    '/api/pad-files',
    {
      config: {
        ...LABOUR,
        file: {
          type: TAR,
          description:
            'A pad as GET /api/pads/{pad}/file gives it: at most 2 GB, 5000 plans and 5000 pictures.',
        },
      },
      schema: {
        summary: 'Bring a pad that was saved as a file on another computer.',
        consumes: [TAR],
        response: answers({ 201: Wire.Pad }),
      },
    },
    async (request, reply) => {
      const source: unknown = request.body;
      if (!isBytes(source))
        throw expected(
          `a file (${TAR})`,
          'file',
          request.headers['content-type'] ?? 'nothing',
          'Choose the file in which the pad was saved.',
        );
      const pad = await takePadFile(edges, source);
      return reply.code(201).header('location', `/api/pads/${pad.id}`).send(pad);
    },
  );
}

function isBytes(body: unknown): body is AsyncIterable<Uint8Array> {
  return typeof body === 'object' && body !== null && Symbol.asyncIterator in body;
}
