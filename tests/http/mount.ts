import { onTestFinished } from 'vitest';
import { buildApp } from '../../server/app.ts';
import type * as Pads from '../../server/contract/pads.ts';
import type * as Plans from '../../server/contract/plans.ts';
import type { Problem } from '../../server/contract/values.ts';
import { createChanges } from '../../server/http/changes.ts';
import type { Edges, Service } from '../../server/http/edges.ts';
import type { Desk } from '../../server/photo-desk.ts';
import { openForTest } from '../store/folder.ts';
import { fakeDesk, papers, photoOf } from './fake-desk.ts';
import type { Scene } from './fake-desk.ts';
import { form } from './form.ts';
import type { Part } from './form.ts';

type Response = Awaited<ReturnType<Service['inject']>>;
type Method = 'GET' | 'HEAD' | 'POST' | 'PUT' | 'PATCH' | 'DELETE' | 'OPTIONS';

export interface Mounted {
  readonly app: Service;
  readonly edges: Edges;
  readonly stop: () => Promise<void>;
}

/** The service on a folder, without a port; ids are counted, not drawn, and the clock stands unless one is given. */
export async function mount(
  folder: string,
  desk: Desk = fakeDesk(),
  host = '127.0.0.1',
  now = () => '2026-05-04T03:02:01.000Z',
): Promise<Mounted> {
  const store = await openForTest(folder);
  let count = (await store.read.facts.at('ids of tests')) ?? '0';
  const edges: Edges = {
    store,
    desk,
    now,
    newId: () => `id-${(count = String(Number(count) + 1))}`,
    changes: await createChanges(store),
    doing: () => null,
    version: '0.0.0',
  };
  const app = await buildApp(edges, { host, page: 'no such folder' });
  let open = true;
  const stop = async (): Promise<void> => {
    if (!open) return;
    open = false;
    await app.close();
    await store.write((records) => records.facts.put('ids of tests', count));
    await store.close();
  };
  onTestFinished(stop);
  return { app, edges, stop };
}

export function ask(
  { app }: Mounted,
  method: Method,
  url: string,
  body?: unknown,
  headers: Record<string, string> = {},
): Promise<Response> {
  if (body === undefined) return app.inject({ method, url, headers });
  const text = typeof body === 'string' || Buffer.isBuffer(body) ? body : JSON.stringify(body);
  const type = headers['content-type'] ?? 'application/json';
  return app.inject({ method, url, payload: text, headers: { ...headers, 'content-type': type } });
}

// eslint-disable-next-line @typescript-eslint/no-unnecessary-type-parameters -- the asker knows what it asked for
export function valueOf<T>(answer: Response): T {
  return JSON.parse(answer.payload) as T;
}

export function problemIn(answer: Response): Problem {
  if (!String(answer.headers['content-type']).startsWith('application/problem+json'))
    throw new Error(`Expected a problem but received ${answer.statusCode} ${answer.payload}`);
  return JSON.parse(answer.payload) as Problem;
}

export async function sendForm(
  mounted: Mounted,
  url: string,
  parts: readonly Part[],
  headers: Record<string, string> = {},
): Promise<Response> {
  const { body, headers: own } = form(parts);
  return ask(mounted, 'POST', url, body, { ...headers, ...own });
}

export async function newPad(mounted: Mounted, name = 'Tidewrack'): Promise<string> {
  const sheetSize = { width: '6 in', height: '6 in' };
  const answer = await ask(mounted, 'POST', '/api/pads', { name, sheetSize });
  return valueOf<Pads.Pad>(answer).id;
}

export async function padAt(mounted: Mounted, id: string): Promise<Pads.Pad> {
  return valueOf<Pads.Pad>(await ask(mounted, 'GET', `/api/pads/${id}`));
}

export async function sendPhoto(
  mounted: Mounted,
  pad: string,
  side: 'front' | 'back',
  scene: Scene,
  arrangement = 'one',
): Promise<Pads.PhotoAnswer> {
  const answer = await sendForm(mounted, `/api/pads/${pad}/photos`, [
    ['side', side],
    ['arrangement', arrangement],
    ['photo', photoOf(scene), 'photo.jpg'],
  ]);
  if (answer.statusCode !== 201) throw new Error(`${answer.statusCode} ${answer.payload}`);
  return valueOf<Pads.PhotoAnswer>(answer);
}

/** A pad with six sheets, both sides. */
export async function filledPad(mounted: Mounted): Promise<Pads.Pad> {
  const id = await newPad(mounted);
  await sendPhoto(mounted, id, 'front', { papers: papers(6, 1) });
  await sendPhoto(mounted, id, 'back', { papers: papers(6, 2), shift: 30 });
  return padAt(mounted, id);
}

export async function newPlan(mounted: Mounted, pad: string): Promise<Plans.Plan> {
  const { layouts } = valueOf<{ layouts: { id: string }[] }>(
    await ask(mounted, 'GET', '/api/layouts'),
  );
  const cards = [{ layout: layouts[0]!.id, count: 3 }];
  const answer = await ask(mounted, 'POST', '/api/plans', { pad, cards });
  if (answer.statusCode !== 201) throw new Error(`${answer.statusCode} ${answer.payload}`);
  return valueOf<Plans.Plan>(answer);
}
