import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { shelf } from '../../web/offline/shelf.ts';
import { SHELF } from '../../web/offline/shelf-name.ts';

const worker = readFileSync(new URL('../../web/public/offline-worker.js', import.meta.url), 'utf8');

test('the worker keeps its answers where the page lays by its own', () => {
  const names = [...worker.matchAll(/^const SHELF = '([^']+)';$/gm)].map(([, name]) => name);
  expect(names).toEqual([SHELF]);
  const opened = [...worker.matchAll(/caches\.open\(([^)]*)\)/g)].map(([, name]) => name);
  expect(new Set(opened)).toEqual(new Set(['SHELF']));
  expect(shelf().name).toBe(SHELF);
});
