import type { MultipartFile } from '@fastify/multipart';
import type { FastifyRequest } from 'fastify';
import type { z } from 'zod';
import { expected } from '../refusals/refusal.ts';
import type { Files, Received } from '../store/files.ts';
import { forgetPlace } from './forget-place.ts';
import { Spoken } from './problem.ts';
import { notUnderstood } from './problem-of.ts';
import { issueInWords } from './zod-in-words.ts';

/** A form with words and at most one file, in whatever order they came. */
export interface Form {
  /** The words under a name, in order. */
  words(name: string): readonly string[];
  readonly file: Received | null;
}

/**
 * Reads a multipart form; the file is on disk, whole but for the place where it was taken, when this is kept.
 * The name that the client gave the file is not used. When anything is wrong, nothing stays behind.
 */
export async function readForm(
  request: FastifyRequest,
  files: Files,
  fileField: string,
): Promise<Form> {
  if (!request.isMultipart())
    throw expected(
      'a form with a file (multipart/form-data)',
      fileField,
      request.headers['content-type'] ?? 'nothing',
      `Send a form whose field ${fileField} holds the file.`,
    );
  const words = new Map<string, string[]>();
  let file: Received | null = null;
  try {
    for await (const part of request.parts()) {
      if (part.type === 'field') keepWord(words, part.fieldname, part.value);
      else if (file === null && part.fieldname === fileField) file = await receive(part, files);
      else throw unexpectedFile(part, fileField);
    }
  } catch (fault) {
    if (file !== null) await files.drop(file);
    throw fault;
  }
  return { file, words: (name) => words.get(name) ?? [] };
}

function keepWord(words: Map<string, string[]>, name: string, value: unknown): void {
  const list = words.get(name) ?? [];
  list.push(String(value));
  words.set(name, list);
}

async function receive(part: MultipartFile, files: Files): Promise<Received> {
  const received = await files.receive(part.file as AsyncIterable<Uint8Array>);
  if (!part.file.truncated) return forgetPlace(received, files);
  await files.drop(received);
  throw expected(
    'a file of at most 40 MB',
    part.fieldname,
    'a larger one',
    'Save the picture smaller and send it again.',
    'too-large',
  );
}

function unexpectedFile(part: MultipartFile, fileField: string): Error {
  part.file.resume();
  if (part.fieldname === fileField)
    return expected('one photo', fileField, 'several', 'Send one photo at a time.');
  return expected(
    `a file under the name ${fileField}`,
    part.fieldname,
    'a file',
    `Name the field of the file ${fileField}.`,
  );
}

/** The file of a form that must have one. */
export function fileOf(form: Form, field: string): Received {
  if (form.file !== null) return form.file;
  throw expected('a file', field, 'nothing', `Choose a photo and send it as ${field}.`);
}

/** Reads the words of a form by a schema; a refusal tells which word came, as the body of a form is not kept. */
export function readWords<T>(schema: z.ZodType<T>, words: unknown): T {
  const read = schema.safeParse(words);
  if (read.success) return read.data;
  throw new Spoken(notUnderstood(issueInWords(read.error.issues[0]!, words)));
}
