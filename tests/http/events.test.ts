import type { AddressInfo } from 'node:net';
import { expect, test } from 'vitest';
import { newFolder } from '../store/folder.ts';
import { papers } from './fake-desk.ts';
import { ask, mount, newPad, problemIn, sendPhoto } from './mount.ts';

/** The revisions told, one an event. */
async function* revisions(answer: Response): AsyncGenerator {
  let text = '';
  for await (const piece of answer.body!) {
    text += Buffer.from(piece as Uint8Array).toString();
    for (let end = text.indexOf('\n\n'); end >= 0; end = text.indexOf('\n\n')) {
      const data = /^data: (.*)$/m.exec(text.slice(0, end))?.[1];
      text = text.slice(end + 2);
      if (data !== undefined) yield (JSON.parse(data) as { revision: unknown }).revision;
    }
  }
}

test('an open window is told of each change of its pad, and let go when the service stops', async () => {
  const service = await mount(await newFolder());
  const pad = await newPad(service);
  const other = await newPad(service, 'Other');
  await service.app.listen({ port: 0, host: '127.0.0.1' });
  const { port } = service.app.server.address() as AddressInfo;
  const answer = await fetch(`http://127.0.0.1:${port}/api/pads/${pad}/events`);
  expect(answer.headers.get('content-type')).toBe('text/event-stream');
  const told = revisions(answer);
  expect((await told.next()).value).toBe(1);
  await sendPhoto(service, other, 'front', { papers: papers(2) });
  await sendPhoto(service, pad, 'front', { papers: papers(2) });
  expect((await told.next()).value).toBe(2);
  await ask(service, 'PATCH', `/api/pads/${pad}`, { name: 'Shore' });
  expect((await told.next()).value).toBe(3);
  expect(service.edges.changes.watching()).toBe(1);
  await service.stop();
  expect((await told.next()).done).toBe(true);
  expect(service.edges.changes.watching()).toBe(0);
});

test('there is nothing to watch on a pad that is not there', async () => {
  const service = await mount(await newFolder());
  expect(problemIn(await ask(service, 'GET', '/api/pads/none/events'))).toMatchObject({
    status: 404,
    field: 'pad',
  });
});
