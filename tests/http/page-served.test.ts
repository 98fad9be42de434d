/** The files of the page, as they are served. */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { buildApp } from '../../server/app.ts';
import type { Service } from '../../server/http/edges.ts';
import { newFolder } from '../store/folder.ts';
import { mount } from './mount.ts';

const HIDDEN = 'nobody reads this';
const HTML = { accept: 'text/html,*/*' };

/** A service with a page of three files, and a secret beside its folder and in it. */
async function served(): Promise<Service> {
  const folder = await newFolder();
  const page = join(folder, 'page');
  await mkdir(join(page, 'assets'), { recursive: true });
  await writeFile(join(page, 'index.html'), '<!doctype html><title>Plyhue</title>');
  await writeFile(join(page, 'assets', 'table.js'), 'export {};');
  await writeFile(join(page, '.secret'), HIDDEN);
  await writeFile(join(folder, 'secret.txt'), HIDDEN);
  const { edges } = await mount(await newFolder());
  const app = await buildApp(edges, { host: '127.0.0.1', page });
  onTestFinished(() => app.close());
  return app;
}

describe('the page', () => {
  test('comes for every place in it, under a policy that lets no inline script run', async () => {
    const app = await served();
    for (const url of ['/', '/pads/one', '/plans/one/guide']) {
      const { statusCode, headers, payload } = await app.inject({ url, headers: HTML });
      expect([url, statusCode, payload]).toEqual([url, 200, expect.stringContaining('Plyhue')]);
      expect(headers['content-type']).toMatch(/^text\/html/);
      const policy = String(headers['content-security-policy']);
      expect(policy).toContain("script-src 'self'");
      expect(policy).not.toContain('unsafe');
    }
  });

  test('has its files with their own type, which no browser may guess anew', async () => {
    const app = await served();
    const { headers } = await app.inject({ url: '/assets/table.js' });
    expect(headers['content-type']).toMatch(/^(text|application)\/javascript/);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['cache-control']).toContain('immutable');
  });

  test.each([
    '/assets/',
    '/assets',
    '/.secret',
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/assets/%00',
    '//etc/passwd',
  ])('shows no folder, no hidden file and nothing beside it: %s', async (url) => {
    const app = await served();
    const { statusCode, payload } = await app.inject({ url });
    expect([400, 403, 404]).toContain(statusCode);
    expect(payload).not.toMatch(/nobody reads this|table\.js|root:/);
  });
});
