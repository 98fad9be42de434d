import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { HOUSE, PURE, importFault } from './imports.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));

function sources(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join('/'));
}

function read(file: string): string {
  return readFileSync(join(root, file), 'utf8');
}

describe('the house', () => {
  test('every folder of server/ stands in the table', () => {
    const folders = readdirSync(join(root, 'server'), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map((entry) => entry.name);
    expect(folders.sort()).toEqual(Object.keys(HOUSE).sort());
  });

  test('imports go one way', () => {
    const faults = [...sources('server'), ...sources('web')].flatMap((file) =>
      ts
        .preProcessFile(read(file))
        .importedFiles.map((found) => importFault(file, found.fileName))
        .filter((fault) => fault !== null)
        .map((fault) => `${file}: ${fault}`),
    );
    expect(faults).toEqual([]);
  });

  test('the table allows no circle', () => {
    const open = (folder: string, above: readonly string[]): string[] => {
      const next = HOUSE[folder];
      if (next === undefined || next === '*') return [];
      return next.flatMap((to) =>
        above.includes(to) ? [[...above, folder, to].join(' > ')] : open(to, [...above, folder]),
      );
    };
    expect(Object.keys(HOUSE).flatMap((folder) => open(folder, []))).toEqual([]);
  });

  test.each([
    ['server/colour/lab.ts', '../pad/pad.ts'],
    ['server/pad/pad.ts', 'sharp'],
    ['server/plan/solve.ts', 'node:fs'],
    ['server/guide/pages.ts', '../app.ts'],
    ['server/http/pads.ts', 'kysely'],
    ['server/contract/pads.ts', '../pad/pad.ts'],
    ['web/main.tsx', '../server/plan/plan.ts'],
  ])('a wrong import is seen: %s imports %s', (file, specifier) => {
    expect(importFault(file, specifier)).not.toBeNull();
  });

  test('the pure folders know no clock and no chance', () => {
    const impure = /\b(?:Date\.now|new Date\(\)|performance\.now|Math\.random|process\.|fetch\()/;
    const faults = PURE.flatMap((folder) => sources(`server/${folder}`)).filter((file) =>
      impure.test(read(file)),
    );
    expect(faults).toEqual([]);
  });
});
