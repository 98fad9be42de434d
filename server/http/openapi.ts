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

declare module 'fastify' {
  interface FastifyContextConfig {
    form?: FormOfRoute;
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
  const forms = noteForms(app);
  app.get('/api/openapi.json', { schema: { hide: true } }, (_request, reply) =>
    reply
      .type('application/json; charset=utf-8')
      .serializer(JSON.stringify)
      .send(withForms(app.swagger() as unknown as Document, forms)),
  );
}

interface Document {
  readonly paths?: Record<string, Record<string, object>>;
}

interface NotedForm {
  readonly path: string;
  readonly method: string;
  readonly form: FormOfRoute;
}

function noteForms(app: Service): readonly NotedForm[] {
  const forms: NotedForm[] = [];
  app.addHook('onRoute', ({ url, method, config }) => {
    if (config?.form === undefined) return;
    const path = url.replace(/:(\w+)/g, '{$1}');
    forms.push({ path, method: String(method).toLowerCase(), form: config.form });
  });
  return forms;
}

/** The forms are read part by part and never stand as one body, so they are written into the document here. */
function withForms(document: Document, forms: readonly NotedForm[]): Document {
  const paths = { ...document.paths };
  for (const { path, method, form } of forms) {
    const item = paths[path];
    if (item?.[method] === undefined) continue;
    paths[path] = { ...item, [method]: { ...item[method], requestBody: bodyOf(form) } };
  }
  return { ...document, paths };
}

function bodyOf({ file, words, or }: FormOfRoute): object {
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
