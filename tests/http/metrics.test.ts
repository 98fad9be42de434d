import { expect, test } from 'vitest';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount } from './mount.ts';

/** Form: Prometheus exposition format 0.0.4, 'name{label="value"} number'. */
const SAMPLE = /^[a-z_:][a-z0-9_:]*(\{([a-z_]+="[^"]*",?)*\})? (-?[0-9.e+-]+|NaN|[+-]Inf)$/i;

test('figures tell answers by the pattern of their route, and name no pad', async () => {
  const service = await mount(await newFolder());
  const pad = await filledPad(service);
  await ask(service, 'GET', '/api/pads/nobody');
  const answer = await ask(service, 'GET', '/api/metrics');
  expect(answer.headers['content-type']).toMatch(/^text\/plain; version=0\.0\.4/);
  const lines = answer.payload.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  for (const line of lines) expect(line).toMatch(SAMPLE);
  const count = (route: string, status: number): string | undefined =>
    lines
      .find(
        (line) =>
          line.startsWith('plyhue_answer_seconds_count') &&
          line.includes(`route="${route}"`) &&
          line.includes(`status="${status}"`),
      )
      ?.split(' ')
      .at(-1);
  expect(count('/api/pads/:pad/photos', 201)).toBe('2');
  expect(count('/api/pads/:pad', 404)).toBe('1');
  expect(lines).toContain('plyhue_work_under_way{kind="photo"} 0');
  expect(answer.payload).not.toContain(pad.id);
});
