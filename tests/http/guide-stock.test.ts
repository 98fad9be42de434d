import { describe, expect, test } from 'vitest';
import type * as Guides from '../../server/contract/plan-guides.ts';
import type { BestSupplies } from '../../server/contract/supplies.ts';
import type { Desk } from '../../server/photo-desk.ts';
import { formatSize } from '../../server/lengths/format-length.ts';
import { newFolder } from '../store/folder.ts';
import { fakeDesk } from './fake-desk.ts';
import { ask, filledPad, mount, newPlan, problemIn, valueOf } from './mount.ts';

/** Sizes of sheets: ANSI/ASME Y14.1 (A, 8 1/2 x 11 in) and ISO 216 (A4, 210 x 297 mm). */
const [LETTER, A4] = ['8 1/2 x 11 in', '210 x 297 mm'] as const;

describe('the sheets that her cardstock comes in', () => {
  test.each([
    ['', LETTER],
    ['?ruler=mm', A4],
    ['?paper=a4', A4],
    ['?paper=a4&ruler=in', A4],
    ['?paper=letter&ruler=mm', LETTER],
    ['?paper=a4&stock=letter', LETTER],
    ['?stock=a4&ruler=in', A4],
  ])('printed by guide.pdf%s are %s', async (query, size) => {
    const printed: Parameters<Desk['guide']>[0][] = [];
    const desk: Desk = {
      ...fakeDesk(),
      guide: (task) => {
        printed.push(task);
        return Promise.resolve(Buffer.from('%PDF'));
      },
    };
    const service = await mount(await newFolder(), desk);
    const plan = await newPlan(service, (await filledPad(service)).id);
    const answer = await ask(service, 'GET', `/api/plans/${plan.id}/guide.pdf${query}`);
    expect(answer.statusCode).toBe(200);
    // It is kept under the name of the pad, its cards and its day.
    expect(answer.headers['content-disposition']).toMatch(
      /^inline; filename="[^"]+, \d+ cards?, \d{4}-\d\d-\d\d\.pdf"; /,
    );
    const ruler = size === A4 ? 'mm' : 'in';
    expect(printed.map(({ ask: { stock } }) => formatSize(stock!, ruler))).toEqual([size]);
  });

  test('are the same on the screen, in its drawings and on the shopping list', async () => {
    const service = await mount(await newFolder());
    const plan = await newPlan(service, (await filledPad(service)).id);
    const guide = async (query: string): Promise<Guides.PlanGuide> =>
      valueOf(await ask(service, 'GET', `/api/plans/${plan.id}/guide${query}`));
    const sizesOf = ({ cardstock }: Guides.PlanGuide): (string | undefined)[] =>
      cardstock.map(({ takes }) => takes?.size);
    for (const size of sizesOf(await guide('?ruler=in'))) expect(size).toBe(LETTER);
    for (const size of sizesOf(await guide('?ruler=mm'))) expect(size).toBe(A4);
    const asked = await guide('?ruler=in&stock=a4');
    // 210 mm and 297 mm to the nearest 1/16 in.
    for (const size of sizesOf(asked)) expect(size).toBe('A4 (8 1/4 x 11 11/16 in)');
    for (const { picture, drawing } of asked.cardstock.flatMap(({ sheets }) => sheets)) {
      expect(picture).toMatch(/\?.*stock=a4/);
      const svg = (await ask(service, 'GET', picture)).payload;
      expect(Number(/viewBox="\S+ \S+ (\S+) \S+"/.exec(svg)![1])).toBeCloseTo(drawing.width, 2);
      expect(drawing.height / drawing.width).toBeCloseTo(297 / 210, 1);
    }
    const { takes, missing } = valueOf<BestSupplies>(
      await ask(service, 'GET', `/api/plans/${plan.id}/supplies?stock=a4`),
    );
    expect(takes.length).toBeGreaterThan(0);
    for (const { sheets } of takes) expect(sheets?.size).toMatch(/^A4 \(/);
    const toBuy = missing.filter(({ kind }) => kind === 'cardstock');
    for (const { sheets } of toBuy) expect(sheets).toMatch(/ of A4 \(/);
  });

  test('of another name are refused with what may be asked for', async () => {
    const service = await mount(await newFolder());
    const plan = await newPlan(service, (await filledPad(service)).id);
    const answer = await ask(service, 'GET', `/api/plans/${plan.id}/guide?stock=a3`);
    expect(problemIn(answer)).toMatchObject({ status: 400, field: 'stock' });
  });
});
