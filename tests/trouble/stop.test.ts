/** The service is asked to stop (SIGTERM) while it works: what is under way is finished or handed back. */
import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import type { Pad, PhotoAnswer } from '../../server/contract/pads.ts';
import type { Upload } from '../../server/contract/uploads.ts';
import { sharp } from '../../server/images/sharp.ts';
import { compiled } from '../compiled/compiled.ts';
import { form } from '../http/form.ts';
import { marked } from '../http/kill-rounds.ts';
import { newFolder } from '../store/folder.ts';

test('asked to stop while photos are read and wait, it answers, ends by itself, and reads the others at the next start', async () => {
  const folder = await newFolder();
  const first = await started(folder);
  const pad = await newPad(first.address);
  const photo = await samplePhoto();
  const waited = send(first.address, pad, marked(photo, 1), 'one');
  const later = await Promise.all(
    [2, 3].map((number) =>
      send(first.address, pad, marked(photo, number), `table ${number}`, true),
    ),
  );
  expect(later.map(({ status }) => status)).toEqual([202, 202]);
  await expect.poll(() => photosUnderWay(first.address)).toBeGreaterThan(0);
  first.child.kill('SIGTERM');
  const answer = await waited;
  expect(answer.status).toBe(201);
  const { photo: read } = (await answer.json()) as PhotoAnswer;
  expect(await first.ended).toBe(0);

  const second = await started(folder);
  for (const one of later) {
    const { id } = (await one.json()) as Upload;
    const state = (): Promise<string> =>
      get<Upload>(second.address, `/api/uploads/${id}`).then((upload) => upload.state);
    await expect.poll(state).toBe('read');
  }
  const { photos } = await get<Pad>(second.address, `/api/pads/${pad}`);
  expect(photos).toHaveLength(3);
  expect(photos.map(({ id }) => id)).toContain(read.id);
  second.child.kill('SIGTERM');
  expect(await second.ended).toBe(0);
});

interface Started {
  readonly child: ChildProcess;
  readonly address: string;
  /** The code that it ends with. */
  readonly ended: Promise<number | null>;
}

async function started(folder: string): Promise<Started> {
  const child = spawn(process.execPath, [compiled('server/main.ts')], {
    env: { ...process.env, DATA_DIR: folder, PORT: '0', DEMO: 'off' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  onTestFinished(() => void child.kill('SIGKILL'));
  const ended = new Promise<number | null>((resolve) => child.on('exit', resolve));
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout.on('data', (data: Buffer) => {
      const found = /ready at (http:\S+)/.exec(String(data))?.[1];
      if (found !== undefined) resolve(found);
    });
    child.on('exit', () => reject(new Error('the service did not start')));
  });
  return { child, address, ended };
}

async function get<T>(address: string, way: string): Promise<T> {
  return (await (await fetch(`${address}${way}`)).json()) as T;
}

async function newPad(address: string): Promise<string> {
  const answer = await fetch(`${address}/api/pads`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ name: 'Stopped', sheetSize: { width: '6 in', height: '6 in' } }),
  });
  return ((await answer.json()) as Pad).id;
}

async function samplePhoto(): Promise<Buffer> {
  const file = new URL('../../sample-swatches/tidewrack-a-front.jpg', import.meta.url);
  return sharp(await readFile(fileURLToPath(file)))
    .resize(480)
    .jpeg()
    .toBuffer();
}

function send(
  address: string,
  pad: string,
  photo: Buffer,
  arrangement: string,
  later = false,
): Promise<Response> {
  const { body, headers } = form([
    ['side', 'front'],
    ['arrangement', arrangement],
    ['photo', photo, 'photo.jpg'],
  ]);
  return fetch(`${address}/api/pads/${pad}/photos`, {
    method: 'POST',
    headers: later ? { ...headers, prefer: 'respond-async' } : headers,
    body: new Uint8Array(body),
  });
}

async function photosUnderWay(address: string): Promise<number> {
  const text = await (await fetch(`${address}/api/metrics`)).text();
  return Number(/^plyhue_work_under_way\{kind="photo"\} (\d+)$/m.exec(text)?.[1]);
}
