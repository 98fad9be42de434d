import { describe, expect, test } from 'vitest';
import { CheckedLayout, LayoutListing as Listing } from '../../server/contract/layouts.ts';
import type { Layout, LayoutListing } from '../../server/contract/layouts.ts';
import { newFolder } from '../store/folder.ts';
import { ask, mount, problemIn, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

async function all(service: Mounted): Promise<LayoutListing[]> {
  return valueOf<{ layouts: LayoutListing[] }>(await ask(service, 'GET', '/api/layouts')).layouts;
}

/** One of the catalogue as she would send it for her own. */
function asHers({ name, card, fold, layers }: LayoutListing): Omit<Layout, 'id'> {
  return { name: `${name}, mine`, card, fold, layers };
}

describe('layouts', () => {
  test('the catalogue is listed with drawings that hold no script', async () => {
    const service = await mount(await newFolder());
    const layouts = await all(service);
    expect(layouts.length).toBeGreaterThanOrEqual(24);
    for (const layout of layouts) {
      expect(() => Listing.parse(layout)).not.toThrow();
      expect(layout.drawing).toMatch(/^<svg /);
      expect(layout.drawing).not.toMatch(/<script|onload|style=/i);
    }
  });

  test('each of ours can be sent back as hers and reads the same', async () => {
    const service = await mount(await newFolder());
    for (const ours of await all(service)) {
      const answer = await ask(service, 'POST', '/api/layouts', asHers(ours));
      expect([ours.id, answer.statusCode]).toEqual([ours.id, 201]);
      const made = valueOf<LayoutListing>(answer);
      expect(asHers({ ...made, name: ours.name })).toEqual(asHers(ours));
      expect([made.origin, made.papers]).toEqual(['hers', ours.papers]);
    }
  });

  test('what she calls a layer is kept beside its id, in her own letters', async () => {
    const service = await mount(await newFolder());
    const ours = asHers((await all(service))[0]!);
    const calling = (called: string): Omit<Layout, 'id'> => ({
      ...ours,
      layers: ours.layers.map((layer, at) => (at === 2 ? { ...layer, called } : layer)),
    });
    const made = valueOf<LayoutListing>(
      await ask(service, 'POST', '/api/layouts', calling('Верхняя полоса')),
    );
    expect(made.layers[2]).toMatchObject({ id: 'panel', called: 'Верхняя полоса' });
    expect(made.layers.map(({ id }) => id)).toEqual(ours.layers.map(({ id }) => id));
    const url = `/api/layouts/${made.id}`;
    expect((await ask(service, 'PUT', url, calling('Top strip'))).statusCode).toBe(200);
    const kept = (await all(service)).find(({ id }) => id === made.id)!;
    expect(kept.layers[2]).toMatchObject({ id: 'panel', called: 'Top strip' });
    for (const wrong of ['', 'a'.repeat(41), 'two\nlines'])
      expect(problemIn(await ask(service, 'PUT', url, calling(wrong)))).toMatchObject({
        status: 400,
        field: 'layers[2].called',
      });
  });

  test('one that cannot be made is refused with the layer', async () => {
    const service = await mount(await newFolder());
    const ours = asHers((await all(service))[0]!);
    const layers = ours.layers.map((layer, at) =>
      at === 1 ? { ...layer, box: { ...layer.box, x: '8 in' } } : layer,
    );
    const problem = problemIn(await ask(service, 'POST', '/api/layouts', { ...ours, layers }));
    expect(problem.status).toBe(422);
    expect(problem.field).toMatch(/^layers\[1\]/);
  });

  test('a layout is checked without being kept: what is seen of it, or the field that is wrong', async () => {
    const service = await mount(await newFolder());
    const listed = await all(service);
    const ours = asHers(listed.find(({ id }) => id === 'waistband-us')!);
    const answer = await ask(service, 'POST', '/api/layouts/check', ours);
    const checked = CheckedLayout.parse(valueOf(answer));
    expect(checked.layers.map(({ layer }) => layer)).toEqual(ours.layers.map(({ id }) => id));
    expect(checked.layers.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 6);
    expect(checked.borders).toContainEqual(expect.objectContaining({ a: 'base', b: 'panel' }));
    expect(checked.envelope).toContain('A2 (US)');
    expect(checked.fold).toContain('5 1/2 in from the top edge');
    expect(await all(service)).toHaveLength(listed.length);

    const hidden = [...ours.layers, { ...ours.layers[0]!, id: 'cover', role: 'panel' as const }];
    const wrong = await ask(service, 'POST', '/api/layouts/check', { ...ours, layers: hidden });
    expect(problemIn(wrong)).toMatchObject({ status: 422, field: 'layers[0]' });
  });

  test('an element keeps its size; before it is cut it is told that it crowds, or does not fit', async () => {
    const service = await mount(await newFolder());
    const ours = asHers((await all(service)).find(({ id }) => id === 'waistband-us')!);
    const { id: on, box } = ours.layers.at(-1)!;
    const leaf = { id: 'leaf', kind: 'die-cut', layer: on, box };
    const hers = { ...ours, id: 'with-leaf', elements: [leaf] };
    expect(valueOf(await ask(service, 'POST', '/api/layouts', hers))).toMatchObject({
      elements: [leaf],
    });
    const { notes } = CheckedLayout.parse(
      valueOf(await ask(service, 'POST', '/api/layouts/check', hers)),
    );
    expect(notes).toContainEqual(expect.stringMatching(/die cut "leaf".*crowds/));
    const larger = { ...leaf, box: { ...box, width: '20 in' } };
    const wrong = await ask(service, 'POST', '/api/layouts', { ...hers, elements: [larger] });
    expect(problemIn(wrong)).toMatchObject({ status: 422, field: 'elements[0].box' });
  });

  test('hers can be changed in place, ours not', async () => {
    const service = await mount(await newFolder());
    const [ours] = (await all(service)) as [LayoutListing];
    await ask(service, 'POST', '/api/layouts', { ...asHers(ours), id: 'mine' });
    const changed = { ...asHers(ours), name: 'For the volunteers' };
    expect((await ask(service, 'PUT', '/api/layouts/mine', changed)).statusCode).toBe(200);
    expect((await all(service)).find(({ id }) => id === 'mine')?.name).toBe('For the volunteers');
    const notHers = await ask(service, 'PUT', `/api/layouts/${ours.id}`, changed);
    expect(problemIn(notHers).status).toBe(404);
  });

  test('an id that is taken is refused; hers can be deleted, ours not', async () => {
    const service = await mount(await newFolder());
    const [ours] = (await all(service)) as [LayoutListing];
    const taken = await ask(service, 'POST', '/api/layouts', { ...asHers(ours), id: ours.id });
    expect(problemIn(taken)).toMatchObject({ status: 409, field: 'id' });
    const made = await ask(service, 'POST', '/api/layouts', { ...asHers(ours), id: 'mine' });
    expect(valueOf<LayoutListing>(made).id).toBe('mine');
    expect((await ask(service, 'DELETE', '/api/layouts/mine')).statusCode).toBe(204);
    expect((await ask(service, 'DELETE', `/api/layouts/${ours.id}`)).statusCode).toBe(404);
  });
});
