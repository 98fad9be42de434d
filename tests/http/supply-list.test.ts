import { describe, expect, test } from 'vitest';
import type { Listed, Supplies } from '../../server/contract/supplies.ts';
import { newFolder } from '../store/folder.ts';
import { papers, photoOf } from './fake-desk.ts';
import { ask, mount, problemIn, sendForm, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

const CSV = { 'content-type': 'text/csv; charset=utf-8' };

const bring = (service: Mounted, text: string): ReturnType<typeof ask> =>
  ask(service, 'POST', '/api/supplies.csv', text, CSV);

async function shelf(service: Mounted): Promise<Supplies['supplies']> {
  return valueOf<Supplies>(await ask(service, 'GET', '/api/supplies')).supplies;
}

describe('the list of supplies', () => {
  // RFC 4180: CR LF ends a line; a field with a comma or a quote is quoted, the quote doubled.
  test('goes out as RFC 4180 says and comes back the same', async () => {
    const service = await mount(await newFolder());
    const list =
      'kind,name,L,a,b,sheets\r\ncardstock,"Shell, ""pale""",92,1,6.125,12\r\nink,Kelp,41.25,-12.5,7.125,\r\n';
    expect(valueOf<Listed>(await bring(service, list))).toMatchObject({ added: 2, changed: 0 });
    const answer = await ask(service, 'GET', '/api/supplies.csv');
    expect(answer.headers['content-type']).toMatch(/^text\/csv/);
    expect(answer.payload).toBe(list);
    const before = await shelf(service);
    expect(valueOf<Listed>(await bring(service, list))).toMatchObject({ added: 0, same: 2 });
    expect(await shelf(service)).toEqual(before);
  });

  test('a line that was changed by hand changes the supply it names, its photo only when its colour changed', async () => {
    const service = await mount(await newFolder());
    await sendForm(service, '/api/supplies', [
      ['photo', photoOf({ papers: papers(2) }), 'inks.jpg'],
      ['kind', 'ink'],
      ['name', 'Kelp'],
      ['name', 'Coral'],
    ]);
    const [kelp, coral] = (await shelf(service)) as [
      Supplies['supplies'][0],
      Supplies['supplies'][0],
    ];
    const { payload } = await ask(service, 'GET', '/api/supplies.csv');
    const lines = payload.split('\r\n');
    lines[1] = lines[1]!.replace(/,$/, ',3');
    lines[2] = 'ink,Coral,60,40,28,';
    const answer = await bring(service, lines.join('\r\n'));
    expect(valueOf<Listed>(answer)).toMatchObject({ added: 0, changed: 2 });
    const [first, second] = await shelf(service);
    expect(first).toEqual({ ...kelp, sheets: 3, revision: 2 });
    expect(second).toMatchObject({ id: coral.id, photo: null, colour: { lab: [60, 40, 28] } });
  });

  test.each([
    ['paint,Kelp,41,-12,7,', 'line 3, kind'],
    ['ink,,41,-12,7,', 'line 3, name'],
    ['ink,Kelp,"41,5",-12,7,', 'line 3, L'],
    ['ink,Kelp,41,-12,999,', 'line 3, b'],
    ['ink,Kelp,41,-12,7,many', 'line 3, sheets'],
  ])(
    'one wrong line and nothing is taken; its line and column are named: %s',
    async (line, field) => {
      const service = await mount(await newFolder());
      const answer = await bring(
        service,
        `kind,name,L,a,b,sheets\ncardstock,Shell,92,1,6,\n${line}`,
      );
      const problem = problemIn(answer);
      expect([problem.status, problem.field]).toEqual([400, field]);
      expect(problem.mend).not.toBe('');
      expect(await shelf(service)).toEqual([]);
    },
  );

  test('what is no list is refused', async () => {
    const service = await mount(await newFolder());
    expect(problemIn(await ask(service, 'POST', '/api/supplies.csv', { a: 1 })).status).toBe(400);
    expect(problemIn(await bring(service, 'colour;paper')).field).toBe('line 1');
  });
});
