import swagger from '@fastify/swagger';
import { jsonSchemaTransform, jsonSchemaTransformObject } from 'fastify-type-provider-zod';
import { z } from 'zod';
import type { Service } from './edges.ts';

/** What a route takes as a form: the field of the file, the schema of the words, and of JSON where that is taken too. */
interface FormOfRoute {
  readonly file: string;
  readonly words: z.ZodObject;
  readonly or?: z.ZodType;
}

/** What a route takes as it comes, neither form nor JSON. */
interface FileOfRoute {
  readonly type: string;
  readonly description: string;
  /** Text is described by an example; bytes by nothing. */
  readonly example?: string;
}

declare module 'fastify' {
  interface FastifyContextConfig {
    form?: FormOfRoute;
    file?: FileOfRoute;
  }
}

/** Writes the OpenAPI 3.1 document from the schemas of the routes and serves it. */
export async function describeApi(app: Service, version: string): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Plyhue',
        version,
        description:
          'Photos of patterned papers in, coordinated card plans with pictures and a cutting guide out. ' +
          'Lengths are text as a person writes them; colours are CIELAB under D65; problems follow RFC 9457. ' +
          'Changes may carry If-Match; what makes a thing may carry Idempotency-Key.',
      },
    },
    transform: jsonSchemaTransform,
    transformObject: jsonSchemaTransformObject,
  });
  const bodies = noteBodies(app);
  app.get('/api/openapi.json', { schema: { hide: true } }, (_request, reply) =>
    reply
      .type('application/json; charset=utf-8')
      .serializer(JSON.stringify)
      .send(withBodies(app.swagger() as unknown as Document, bodies)),
  );
}

interface Document {
  readonly paths?: Record<string, Record<string, object>>;
}

interface NotedBody {
  readonly path: string;
  readonly method: string;
  readonly body: object;
}

function noteBodies(app: Service): readonly NotedBody[] {
  const bodies: NotedBody[] = [];
  app.addHook('onRoute', ({ url, method, config }) => {
    if (config?.form === undefined && config?.file === undefined) return;
    const path = url.replace(/:(\w+)/g, '{$1}');
    const body = config.form === undefined ? fileBody(config.file!) : formBody(config.form);
    bodies.push({ path, method: String(method).toLowerCase(), body });
  });
  return bodies;
}

/** Forms and files are read piece by piece and never stand as one body, so they are written into the document here. */
function withBodies(document: Document, bodies: readonly NotedBody[]): Document {
  const paths = { ...document.paths };
  for (const { path, method, body } of bodies) {
    const item = paths[path];
    if (item?.[method] === undefined) continue;
    paths[path] = { ...item, [method]: { ...item[method], requestBody: body } };
  }
  return { ...document, paths };
}

/** For bytes OpenAPI 3.1 asks for no schema ('Considerations for File Uploads'), for text for a string. */
function fileBody({ type, description, example }: FileOfRoute): object {
  const content = example === undefined ? {} : { schema: { type: 'string' }, example };
  return { required: true, description, content: { [type]: content } };
}

function formBody({ file, words, or }: FormOfRoute): object {
  const form = plain(words) as { properties: object; required?: readonly string[] };
  const schema = {
    ...form,
    properties: { ...form.properties, [file]: { type: 'string', format: 'binary' } },
    required: [...(form.required ?? []), file],
  };
  return {
    required: true,
    content: {
      'multipart/form-data': { schema },
      ...(or === undefined ? {} : { 'application/json': { schema: plain(or) } }),
    },
  };
}

function plain(schema: z.ZodType): object {
  const whole = z.toJSONSchema(schema, { io: 'input' });
  delete whole.$schema;
  return whole;
}
