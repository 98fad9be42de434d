/**
 * How long the event loop of the service stands still, way by way: each way that answers with something is asked
 * for a pad of 48 sheets and a plan of 24 cards, and the service itself says how long it stood still.
 *
 *   npx tsx tests/benchmark/crowd-routes.ts --sheets 12 --times
 */
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { setTimeout as pause } from 'node:timers/promises';
import sharp from 'sharp';
import type { Pad } from '../../server/contract/pads.ts';
import type { Plan } from '../../server/contract/plans.ts';
import { form } from '../http/form.ts';
import { marked } from '../http/kill-rounds.ts';
import { alone, numberAfter } from './alone.ts';
import { lagOf } from './crowd-loop.ts';
import type { Figure, Topic } from './figure.ts';
import { inFolder, startPad, startService } from './running-service.ts';

/** Two tables of six sheets; sent again under other names they are more sheets. */
const TABLES = ['tidewrack-a', 'tidewrack-b'] as const;
const SHEETS_A_TABLE = 6;
/** The first time code is loaded and compiled, which blocks once; of the later times the longest counts. */
const TIMES = 3;
/** The watching clock ticks every 10 ms and tells from one tick to the next; so it is let tick before and after. */
const TICKS = 40;

interface Way {
  readonly name: string;
  readonly ask: (round: number) => Promise<Response>;
}

interface Asked {
  readonly name: string;
  /** In ms, of the first time and the longest of the later ones. */
  readonly first: number;
  readonly later: number;
  /** Answers that were no success, by their status. */
  readonly refused: readonly number[];
}

export async function routeFigures(folder: string, sheets = 48): Promise<Figure[]> {
  const service = await startService(folder);
  try {
    const { address } = service;
    const pad = await padOf(address, sheets);
    const asked: Asked[] = [];
    for (const way of await waysOf(address, pad)) asked.push(await askWay(address, way));
    asked.sort((p, q) => q.later - p.later);
    if (process.argv.includes('--times')) console.table(asked);
    const [worst, second] = asked;
    const refused = asked.filter((way) => way.refused.length > 0);
    return [
      {
        name: 'ways of asking that were not answered with what was asked for',
        value: refused.length,
        unit: '',
        bar: { at: 'most', value: 0 },
        note: refused.map((way) => `${way.name}: ${way.refused.join(', ')}`).join('; '),
      },
      {
        name: 'event loop of the service, way by way: longest',
        value: worst!.later,
        unit: 'ms',
        bar: { at: 'most', value: 50 },
        note: `${asked.length} ways of asking, a pad of ${pad.sheets.length} sheets, a plan of ${CARDS} cards; ${worst!.name}, then ${second!.name} with ${second!.later.toFixed(1)} ms; each was asked ${TIMES} times more after the first; the 10 ms of the watching clock count in`,
      },
    ];
  } finally {
    await service.stop();
  }
}

async function askWay(address: string, { name, ask }: Way): Promise<Asked> {
  const lags: number[] = [];
  const refused: number[] = [];
  for (let round = 0; round <= TIMES; round++) {
    await lagOf(address);
    await pause(TICKS);
    const answer = await ask(round);
    await answer.arrayBuffer();
    if (!answer.ok) refused.push(answer.status);
    await pause(TICKS);
    lags.push((await lagOf(address)).max);
  }
  return { name, first: lags[0]!, later: Math.max(...lags.slice(1)), refused };
}

const CARDS = 24;

async function padOf(address: string, sheets: number): Promise<Pad> {
  const id = await startPad(address);
  for (let table = 0; table < Math.ceil(sheets / SHEETS_A_TABLE); table++)
    for (const side of ['front', 'back'] as const) {
      const photo = await samplePhoto(`${TABLES[table % TABLES.length]!}-${side}.jpg`);
      const answer = await send(address, id, marked(photo, table), side, `table ${table}`);
      if (!answer.ok) throw new Error(`${answer.status} ${await answer.text()}`);
      await answer.arrayBuffer();
    }
  return (await (await fetch(`${address}/api/pads/${id}`)).json()) as Pad;
}

function samplePhoto(name: string): Promise<Buffer> {
  return readFile(fileURLToPath(new URL(`../../sample-swatches/${name}`, import.meta.url)));
}

function send(
  address: string,
  pad: string,
  photo: Uint8Array,
  side: string,
  arrangement: string,
): Promise<Response> {
  const { body, headers } = form([
    ['side', side],
    ['arrangement', arrangement],
    ['photo', Buffer.from(photo), 'photo.jpg'],
  ]);
  return fetch(`${address}/api/pads/${pad}/photos`, {
    method: 'POST',
    headers,
    body: new Uint8Array(body),
  });
}

/** Each way that answers with more than a few words, and what changes most. */
async function waysOf(address: string, pad: Pad): Promise<Way[]> {
  const post = (way: string, body: unknown, method = 'POST'): Promise<Response> =>
    fetch(`${address}${way}`, {
      method,
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
  const get = (way: string): Promise<Response> => fetch(`${address}${way}`);
  const colour = { lab: [50, 20, -10] };
  const inks = await post('/api/supplies', { kind: 'ink', name: 'Kelp', colour });
  const { supplies } = (await inks.json()) as { supplies: { id: string }[] };
  for (const [at, name] of ['Sand', 'Slate', 'Coral'].entries())
    await post('/api/supplies', {
      kind: 'cardstock',
      name,
      colour: { lab: [90 - 20 * at, 5 * at, 5 * at] },
    });
  const cards = ['one-paper-us', 'four-panes-us', 'six-tiles-us', 'slanted-band-us'].map(
    (layout) => ({
      layout,
      count: CARDS / 4,
    }),
  );
  const wish = { pad: pad.id, cards };
  const made = await post('/api/plans', wish);
  if (!made.ok) throw new Error(`${made.status} ${await made.text()}`);
  const plan = (await made.json()) as Plan;
  const large = await largePhotos();
  const side = pad.sheets[0]!.front!.id;
  const layer = plan.cards[0]!.layers[0]!.layer;
  const paper = plan.cards[0]!.layers.find(({ sheet }) => sheet !== undefined)!.layer;
  const of = (way: string): Way => ({
    name: `GET ${way.replace(pad.id, 'ID').replace(plan.id, 'ID').replace(side, 'ID')}`,
    ask: () => get(way),
  });
  const [p, q] = [`/api/pads/${pad.id}`, `/api/plans/${plan.id}`];
  return [
    {
      name: 'a pad, asked for after a change',
      ask: async (round) => {
        const label = `Sheet of round ${round}`;
        await (await post(`/api/sheets/${pad.sheets[0]!.id}`, { label }, 'PATCH')).arrayBuffer();
        return get(p);
      },
    },
    ...[p, `${p}/coordination`, `${p}/coordination?side=${side}`, `${p}/leftovers`].map(of),
    ...['/api/layouts', '/api/supplies', '/api/supplies.csv', '/api/openapi.json'].map(of),
    of(`/api/sides/${side}/supplies`),
    { name: 'POST /api/plans', ask: () => post('/api/plans', wish) },
    {
      name: 'POST /api/plans?drawings=changed',
      ask: (round) => {
        const pins = [{ card: 1, layer: paper, sheet: pad.sheets[round]!.id }];
        return post('/api/plans?drawings=changed', { ...wish, from: plan.id, pins });
      },
    },
    ...['', '/others', '/curve', '/weakest', '/guide', '/cuts', '/supplies', '/class-set'].map(
      (way) => of(`${q}${way}`),
    ),
    ...['/guide.pdf', '/class-set?people=12', '/cards/card-1.png', '/cards/card-24.svg'].map(
      (way) => of(`${q}${way}`),
    ),
    of(`${q}/cards/card-24.svg?papers=beside`),
    of(`${q}/slots/${plan.sheetsUsed[0]!.slot}.svg`),
    of(`${q}/without/${plan.sheetsUsed[0]!.sheet}`),
    of(`${q}/cards/card-1/layers/${layer}/choices`),
    {
      name: 'POST /api/matches',
      ask: () => post('/api/matches', { supply: supplies[0]!.id, side }),
    },
    ...large.map(({ name, bytes }): Way => ({
      name: `a photo sent: ${name}`,
      ask: (round) => send(address, pad.id, bytes, 'front', `${name} ${round}`),
    })),
    {
      name: 'a pad saved as a file, deleted and brought again',
      ask: async () => {
        const file = await (await get(`${p}/file`)).arrayBuffer();
        await fetch(`${address}${p}`, { method: 'DELETE' });
        return fetch(`${address}/api/pad-files`, {
          method: 'POST',
          headers: { 'content-type': 'application/x-tar' },
          body: file,
        });
      },
    },
  ];
}

async function largePhotos(): Promise<{ name: string; bytes: Buffer }[]> {
  const shown = sharp(await samplePhoto('tidewrack-a-front.jpg')).resize(4000, 3000, {
    fit: 'fill',
  });
  return [
    { name: '12 megapixels, JPEG', bytes: await shown.clone().jpeg({ quality: 95 }).toBuffer() },
    {
      name: '12 megapixels, PNG',
      bytes: await shown.clone().png({ compressionLevel: 1 }).toBuffer(),
    },
  ];
}

const routes: Topic = () =>
  inFolder((folder) => routeFigures(folder, numberAfter('--sheets') ?? 48));

await alone(import.meta.url, routes);
