import { describe, expect, test } from 'vitest';
import { ClassSet } from '../../server/contract/class-sets.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, newPlan, problemIn, valueOf } from './mount.ts';

describe('a class set', () => {
  test('multiplies sheets, cardstock and bags by the people', async () => {
    const service = await mount(await newFolder());
    const plan = await newPlan(service, (await filledPad(service)).id);
    const of = async (query: string): Promise<ClassSet> =>
      ClassSet.parse(valueOf(await ask(service, 'GET', `/api/plans/${plan.id}/class-set${query}`)));
    const [one, many] = [await of(''), await of('?people=12&stack=2')];
    expect(one.sheets).toBe(plan.sheetsUsed.length);
    expect(many.sheets).toBe(12 * one.sheets);
    expect(many.labels).toBe(12 * 3);
    expect(many.pads).toBeGreaterThanOrEqual(12);
    expect(Math.max(...many.stacks.map(({ sheets }) => sheets))).toBe(2);
    expect(many.cardstock.map(({ pieces }) => pieces)).toEqual(
      one.cardstock.map(({ pieces }) => 12 * pieces),
    );
    const wrong = await ask(service, 'GET', `/api/plans/${plan.id}/class-set?people=0`);
    expect(problemIn(wrong)).toMatchObject({ status: 400, field: 'people' });
  });

  test('has a guide with a label for each bag, which is longer than that for one', async () => {
    const service = await mount(await newFolder());
    const plan = await newPlan(service, (await filledPad(service)).id);
    const pages = async (query: string): Promise<number> => {
      const { rawPayload } = await ask(service, 'GET', `${plan.guide}${query}`);
      return [...rawPayload.toString('latin1').matchAll(/\/Type \/Page\b/g)].length;
    };
    expect(await pages('?people=8')).toBeGreaterThan((await pages('')) + 1);
  });
});
