import type { FastifyReply } from 'fastify';
import { z } from 'zod';
import * as Wire from '../contract/pads.ts';
import { Upload } from '../contract/uploads.ts';
import { expected } from '../refusals/refusal.ts';
import type { Tap } from '../photo/picture.ts';
import type { Shelf } from '../store/files.ts';
import { NOTHING, answers, fileAnswer } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { fileOf, readForm, readWords } from './form.ts';
import type { Form } from './form.ts';
import { found } from './found.ts';
import { holdFresh, stateRevision } from './fresh.ts';
import { readPhotoAgain } from './read-again.ts';
import { removePhoto } from './remove-photo.ts';
import { LABOUR } from './security.ts';
import { takePhoto, takePhotoForLater } from './take-photo.ts';
import type { TakenPhoto } from './take-photo.ts';
import { uploadOnWire } from './uploads.ts';
import { spotFromWire } from './wire/corners.ts';
import { photoOnWire } from './wire/pads.ts';
import { sideOnWire } from './wire/sides.ts';
import { rulerOf } from './wire/sizes.ts';

const PadPath = z.object({ pad: z.string() });
const Preferring = z.object({
  prefer: z
    .string()
    .optional()
    .describe(
      'respond-async (RFC 7240): answered with 202 as soon as the photo is safe, and read later.',
    ),
});
const PhotoPath = z.object({ photo: z.string() });

export function photoRoutes(app: Service, edges: Edges): void {
  const { store } = edges;

  app.post(
    '/api/pads/:pad/photos',
    {
      config: { ...LABOUR, phone: true, form: { file: 'photo', words: Wire.PhotoForm } },
      schema: {
        summary: 'Add a photo of sheets laid apart, or of one sheet.',
        consumes: ['multipart/form-data'],
        params: PadPath,
        headers: Preferring,
        response: answers({ 201: Wire.PhotoAnswer, 202: Upload }),
      },
    },
    async (request, reply) => {
      const { pad } = request.params;
      found(await store.read.pads.at(pad), 'pad', pad);
      const form = await readForm(request, store.files, 'photo');
      try {
        const received = fileOf(form, 'photo');
        const { side: face, arrangement, white, chips } = formWords(form);
        const sent = { pad, face, arrangement, received, tap: shown(white, chips) };
        if (isForLater(request.headers.prefer)) {
          const upload = uploadOnWire(await takePhotoForLater(edges, sent));
          return await reply
            .code(202)
            .header('location', `/api/uploads/${upload.id}`)
            .header('preference-applied', 'respond-async')
            .send(upload);
        }
        const taken = await takePhoto(edges, sent);
        const answer = await answerOf(edges, taken);
        return await reply.code(201).header('location', answer.photo.picture).send(answer);
      } finally {
        if (form.file !== null) await store.files.drop(form.file);
      }
    },
  );

  app.patch(
    '/api/photos/:photo',
    {
      config: LABOUR,
      schema: {
        summary: 'Show where the white card or the scraps lie; the photo is read again.',
        params: PhotoPath,
        body: Wire.PhotoPatch,
        response: answers({ 200: Wire.PhotoAnswer }),
      },
    },
    async (request, reply) => {
      const { photo: id } = request.params;
      const photo = found(await store.read.photos.at(id), 'photo', id);
      found(photo.pad, 'photo of sheets', id);
      const { white, chips } = request.body;
      await readPhotoAgain(edges, photo, shown(white, chips), (revision) =>
        holdFresh(request, revision),
      );
      const now = found(await store.read.photos.at(id), 'photo', id);
      stateRevision(reply, now.revision);
      return answerOf(edges, { photo: now, sides: await store.read.sides.ofPhoto(id) });
    },
  );

  app.delete(
    '/api/photos/:photo',
    {
      schema: {
        summary: 'Delete a photo with the sides that were read from it.',
        params: PhotoPath,
        response: answers({ 204: NOTHING }),
      },
    },
    async (request, reply) => {
      const { photo: id } = request.params;
      const pad = await store.write(async (records) => {
        const photo = found(await records.photos.at(id), 'photo', id);
        holdFresh(request, photo.revision);
        await removePhoto(records, photo);
        return photo.pad;
      });
      if (pad !== null) edges.changes.tell(pad);
      return reply.code(204).send();
    },
  );

  app.get(
    '/api/photos/:photo/picture',
    {
      config: { phone: true },
      schema: {
        summary: 'The upright photo, shrunk for the screen, without metadata.',
        params: PhotoPath,
        response: answers({ 200: fileAnswer('image/jpeg', 'A JPEG.') }),
      },
    },
    async (request, reply) => {
      const { photo: id } = request.params;
      const photo = found(await store.read.photos.at(id), 'photo', id);
      return sendPicture(edges, reply, 'pictures', photo.picture);
    },
  );
}

/** A JPEG from a shelf; its content never changes under an address, so it may be kept for long. */
export async function sendPicture(
  { store }: Edges,
  reply: FastifyReply,
  shelf: Shelf,
  hash: string,
): Promise<FastifyReply> {
  return sendJpeg(reply, await store.files.read(shelf, hash));
}

export function sendJpeg(reply: FastifyReply, bytes: Uint8Array): FastifyReply {
  return reply
    .type('image/jpeg')
    .header('cache-control', 'private, max-age=31536000, immutable')
    .serializer((sent: string) => sent)
    .send(Buffer.from(bytes));
}

async function answerOf({ store }: Edges, { photo, sides }: TakenPhoto): Promise<Wire.PhotoAnswer> {
  const pad = found(await store.read.pads.at(photo.pad ?? ''), 'pad', photo.pad ?? '');
  const ruler = rulerOf(pad.sheetSize);
  return {
    photo: photoOnWire(photo),
    sides: sides.map((side) => sideOnWire(side, ruler)),
    notes: [...photo.notes],
  };
}

function formWords(form: Form): Wire.PhotoForm {
  const white = form.words('white')[0];
  const chips = form.words('chips')[0];
  return readWords(Wire.PhotoForm, {
    side: form.words('side')[0],
    arrangement: form.words('arrangement')[0],
    ...(white === undefined ? {} : { white: jsonIn(white, 'white') }),
    ...(chips === undefined ? {} : { chips: jsonIn(chips, 'chips') }),
  });
}

function shown(
  white: Wire.PhotoForm['white'],
  chips: Wire.PhotoForm['chips'],
): Pick<Tap, 'white' | 'chips'> {
  return {
    ...(white === undefined ? {} : { white: spotFromWire(white) }),
    ...(chips === undefined ? {} : { chips: chips.map(spotFromWire) }),
  };
}

/** RFC 7240, sections 2 and 4.1. */
function isForLater(prefer: string | string[] | undefined): boolean {
  const wishes = String(prefer ?? '').split(',');
  return wishes.some((wish) => wish.split(';')[0]!.trim().toLowerCase() === 'respond-async');
}

function jsonIn(text: string, field: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw expected(
      'corners or places as JSON',
      field,
      text,
      'Send four corners like [[0,0],[9,0],[9,9],[0,9]], or one place like [4,5]; chips are a list of them.',
    );
  }
}
