import { z } from 'zod';
import * as Wire from '../contract/supplies.ts';
import { saidSupply } from '../supplies/said-supply.ts';
import { TYPED_COLOUR } from '../supplies/supply.ts';
import type { Records } from '../store/records.ts';
import type { SupplyRow } from '../store/rows.ts';
import { NOTHING, answers } from './answers.ts';
import type { Edges, Service } from './edges.ts';
import { fileOf, readForm, readWords } from './form.ts';
import { found } from './found.ts';
import { colourNameRoutes } from './colour-names.ts';
import { holdFresh, stateRevision } from './fresh.ts';
import { keyOf, madeBefore, makeOnce } from './once.ts';
import { LABOUR } from './security.ts';
import { supplyListRoutes } from './supply-list.ts';
import { suppliesAt, takeSupplies } from './take-supplies.ts';
import type { TakenSupplies } from './take-supplies.ts';
import { tieSuppliesRoutes } from './tie-supplies.ts';
import { touchedSupplyRoutes } from './touched-supply.ts';
import { NO_CHIPS } from '../photo/chips.ts';
import { labFromWire } from './wire/colours.ts';
import { chipsOnWire } from './wire/pads.ts';
import { supplyOnWire } from './wire/supplies.ts';
import type { FastifyRequest } from 'fastify';

const SupplyPath = z.object({ supply: z.string() });

export function supplyRoutes(app: Service, edges: Edges): void {
  const { store } = edges;
  supplyListRoutes(app, edges);
  touchedSupplyRoutes(app, edges);
  tieSuppliesRoutes(app, edges);
  colourNameRoutes(app);

  app.post(
    '/api/supplies',
    {
      config: {
        ...LABOUR,
        form: { file: 'photo', words: Wire.SuppliesForm, or: Wire.NewSupply },
      },
      schema: {
        summary: 'Add a cardstock or an ink by its colour, or many by a photo.',
        consumes: ['application/json', 'multipart/form-data'],
        response: answers({ 201: Wire.Supplies }),
      },
    },
    async (request, reply) => {
      const taken = request.isMultipart()
        ? await photographed(edges, request)
        : await typed(edges, request);
      return reply.code(201).send({ ...onWire(taken), ...(await pictureOf(edges, taken)) });
    },
  );

  app.get(
    '/api/supplies',
    { schema: { summary: 'All her supplies.', response: answers({ 200: Wire.Supplies }) } },
    async () => {
      const supplies = await store.read.supplies.all();
      return {
        ...onWire({ supplies, notes: [] }),
        photos: await photosOfSupplies(edges, supplies),
      };
    },
  );

  app.get(
    '/api/supplies/:supply',
    {
      schema: {
        summary: 'A cardstock or an ink.',
        params: SupplyPath,
        response: answers({ 200: Wire.Supply }),
      },
    },
    async (request, reply) => {
      const { supply: id } = request.params;
      const supply = found(await store.read.supplies.at(id), 'supply', id);
      stateRevision(reply, supply.revision);
      return supplyOnWire(supply);
    },
  );

  app.patch(
    '/api/supplies/:supply',
    {
      schema: {
        summary: 'Correct the name of a supply, or how many sheets there are.',
        params: SupplyPath,
        body: Wire.SupplyPatch,
        response: answers({ 200: Wire.Supply }),
      },
    },
    async (request, reply) => {
      const { supply: id } = request.params;
      const { name, sheets } = request.body;
      const supply = await store.write(async (records) => {
        const before = found(await records.supplies.at(id), 'supply', id);
        holdFresh(request, before.revision);
        await records.supplies.put({
          ...before,
          ...(name === undefined ? {} : { name }),
          ...(sheets === undefined ? {} : { sheets }),
        });
        return found(await records.supplies.at(id), 'supply', id);
      });
      stateRevision(reply, supply.revision);
      return supplyOnWire(supply);
    },
  );

  app.delete(
    '/api/supplies/:supply',
    {
      schema: {
        summary: 'Delete a supply; with the last of its photo that photo goes too.',
        params: SupplyPath,
        response: answers({ 204: NOTHING }),
      },
    },
    async (request, reply) => {
      const { supply: id } = request.params;
      await store.write(async (records) => {
        const supply = found(await records.supplies.at(id), 'supply', id);
        holdFresh(request, supply.revision);
        await removeSupply(records, supply);
      });
      return reply.code(204).send();
    },
  );
}

async function typed(edges: Edges, request: FastifyRequest): Promise<TakenSupplies> {
  const { kind, name, colour, sheets = null } = Wire.NewSupply.parse(request.body);
  const given =
    'lab' in colour ? { lab: labFromWire(colour.lab), uncertainty: TYPED_COLOUR } : said(colour);
  const question = keyOf(request, request.body);
  const ids = await edges.store.write((records) =>
    makeOnce(records, question, edges.now(), async () => {
      const id = edges.newId();
      await records.supplies.add({
        id,
        kind,
        name,
        ...given,
        photo: null,
        corners: null,
        sheets,
        demo: false,
        createdAt: edges.now(),
        revision: 1,
      });
      return [id];
    }),
  );
  return { supplies: await suppliesAt(edges, ids), notes: [] };
}

function said({ words }: { readonly words: string }): Pick<SupplyRow, 'lab' | 'uncertainty'> {
  const { lab, uncertainty } = saidSupply(words);
  return { lab, uncertainty };
}

async function photographed(edges: Edges, request: FastifyRequest): Promise<TakenSupplies> {
  const form = await readForm(request, edges.store.files, 'photo');
  try {
    const received = fileOf(form, 'photo');
    const { kind, name } = readWords(Wire.SuppliesForm, {
      kind: form.words('kind')[0],
      name: form.words('name'),
    });
    const question = keyOf(request, [kind, name, received.hash]);
    const before = await madeBefore(edges.store.read, question);
    if (before !== null) return { supplies: await suppliesAt(edges, before), notes: [] };
    return await takeSupplies(edges, { kind, names: name, received, question });
  } finally {
    if (form.file !== null) await edges.store.files.drop(form.file);
  }
}

/** The photo that supplies were found in; none for a typed colour. */
async function pictureOf(
  { store }: Edges,
  { supplies }: TakenSupplies,
): Promise<Pick<Wire.Supplies, 'picture'>> {
  const photo = supplies[0]?.photo ?? null;
  const row = photo === null ? null : await store.read.photos.at(photo);
  if (row === null) return {};
  const { id, width, height } = row;
  return { picture: { address: `/api/photos/${id}/picture`, width, height } };
}

/** The photos of supplies alone, those of a pad are shown with the pad: each from which she has something, or had. */
async function photosOfSupplies(
  { store }: Edges,
  supplies: readonly SupplyRow[],
): Promise<NonNullable<Wire.Supplies['photos']>> {
  const from = new Set(supplies.map(({ photo }) => photo));
  return (await store.read.photos.ofSupplies())
    .filter(({ id, aside = [] }) => from.has(id) || aside.length > 0)
    .map(({ id, width, height, chips = NO_CHIPS, tiedTo = null, aside = [] }) => ({
      id,
      picture: `/api/photos/${id}/picture`,
      width,
      height,
      chips: chipsOnWire(chips),
      tiedTo,
      aside: aside.map(({ name }) => name),
    }));
}

/** A photo of supplies goes with the last that was found in it: nothing would lead to it any more. */
async function removeSupply(records: Records, { id, photo: from }: SupplyRow): Promise<void> {
  await records.supplies.remove(id);
  const photo = from === null ? null : await records.photos.at(from);
  if (photo?.pad !== null || (photo.aside ?? []).length > 0) return;
  if ((await records.supplies.all()).some((one) => one.photo === from)) return;
  await records.photos.remove(photo.id);
}

function onWire({ supplies, notes }: TakenSupplies): Wire.Supplies {
  return { supplies: supplies.map(supplyOnWire), notes: [...notes] };
}
