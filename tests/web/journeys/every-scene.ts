import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { devices, type Device, type Table } from '../table.ts';
import { scenesInOrder } from './scenes.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Looked at on every screen and state: WCAG 2.2 A and AA as far as axe-core checks them, widths, targets, requests. */
export function everyScene(at: () => Table): void {
  it.each([
    ['laptop', 'light'],
    ['laptop', 'dark'],
    ['phone', 'light'],
  ] as const)('shows no fault of access on a %s in the %s', async (device, colorScheme) => {
    const { page, context, faults } = await at().open(device, { colorScheme });
    const found: string[] = [];
    for (const [name, come] of scenesInOrder()) {
      await come(page);
      found.push(...(await accessFaults(page)).map((fault) => `${name}: ${fault}`));
    }
    expect(found).toEqual([]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it.each(Object.keys(devices) as Device[])('fits a %s and its fingers', async (device) => {
    const { page, context } = await at().open(device);
    const found: string[] = [];
    for (const [name, come] of scenesInOrder()) {
      await come(page);
      const wide = await page.evaluate<number>(
        `Math.max(...[document.documentElement, ...document.querySelectorAll('dialog')].map(
          (one) => one.scrollWidth - one.clientWidth,
        ))`,
      );
      if (wide > 0) found.push(`${name}: wider than the screen by ${wide}`);
      found.push(...(await smallTargets(page)).map((target) => `${name}: ${target}`));
      found.push(...(await brokenFigures(page)).map((words) => `${name}: may break: ${words}`));
    }
    expect(found).toEqual([]);
    await context.close();
  });

  it('asks nothing of any other host', async () => {
    const { page, context } = await at().open('laptop');
    const asked = new Set<string>();
    context.on('request', (request) => {
      const url = new URL(request.url());
      if (url.protocol !== 'data:' && url.protocol !== 'blob:') asked.add(url.origin);
    });
    for (const [, come] of scenesInOrder()) await come(page);
    expect([...asked]).toEqual([at().address]);
    await context.close();
  });

  it('moves nothing for who asks for less motion', async () => {
    const { page, context } = await at().open('laptop');
    const moving: string[] = [];
    for (const [name, come] of scenesInOrder()) {
      await come(page);
      const running = await page.evaluate<number>(
        `[...document.querySelectorAll('*')].filter((one) => {
          const style = getComputedStyle(one);
          return style.animationName !== 'none' || style.transitionDuration.split(',').some((time) => parseFloat(time) > 0);
        }).length`,
      );
      if (running > 0) moving.push(`${name}: ${running}`);
    }
    expect(moving).toEqual([]);
    await context.close();
  });
}

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly target: unknown; readonly failureSummary?: string }[];
}

export async function accessFaults(page: Page): Promise<string[]> {
  await page.evaluate(`window.axe || (() => { ${axe} })()`);
  const violations = await page.evaluate<Violation[]>(
    `axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })
      .then((result) => result.violations)`,
  );
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(
      ({ target, failureSummary }) => `${id} at ${JSON.stringify(target)} ${failureSummary ?? ''}`,
    ),
  );
}

/** Everything to touch that is smaller than 44 x 44 px; a field counts with the label it lies in. */
export async function smallTargets(page: Page): Promise<string[]> {
  return await page.evaluate<string[]>(`(() => {
    const touched = 'a[href], button, input, select, summary';
    const open = document.querySelector('dialog[open]') ?? document;
    return [...open.querySelectorAll(touched)].flatMap((one) => {
      if (one.matches('.skip')) return [];
      const label = one.closest('label');
      const boxes = [one, label].filter(Boolean).map((box) => box.getBoundingClientRect());
      if (boxes[0].width === 0) return [];
      const fits = boxes.some((box) => box.width >= 44 && box.height >= 44);
      const { width, height } = boxes[0];
      return fits ? [] : [one.tagName + '.' + one.className + ' ' + Math.round(width) + ' x ' + Math.round(height)];
    });
  })()`);
}

/** Words in which a line may break between a figure and its unit. */
export async function brokenFigures(page: Page): Promise<string[]> {
  return await page.evaluate<string[]>(`(() => {
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const found = [];
    while (walk.nextNode())
      if (/\\d (?:%|in\\b|mm\\b|cm\\b|\\d+\\/\\d)/.test(walk.currentNode.data)) found.push(walk.currentNode.data);
    return found;
  })()`);
}
