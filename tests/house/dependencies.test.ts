import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');
const { dependencies, devDependencies } = JSON.parse(
  readFileSync(join(ROOT, 'package.json'), 'utf8'),
) as Record<'dependencies' | 'devDependencies', Record<string, string>>;
const chapter = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8')
  .split('## What it stands on')[1]!
  .split('\n## ')[0]!;
const rows = chapter
  .split('\n')
  .filter((line) => line.startsWith('| '))
  .slice(2)
  .map((line) => line.split('|').map((cell) => cell.trim()));

/** The row of plugins names them without their scope. */
function namedIn(cell: string, name: string): boolean {
  const short = name.startsWith('@fastify/') ? name.slice('@fastify/'.length) : name;
  return new RegExp(`(^|[ (])${short.replace(/[/.]/g, '\\$&')}($|[ ,)])`).test(cell);
}

test('each package that is shipped stands in the table with its reason, its licence and what would replace it', () => {
  for (const name of Object.keys(dependencies)) {
    const row = rows.find(([, packages]) => namedIn(packages!, name));
    expect([name, row]).toEqual([name, expect.any(Array)]);
    const { license } = JSON.parse(
      readFileSync(join(ROOT, 'node_modules', name, 'package.json'), 'utf8'),
    ) as { license: string };
    expect([name, row![3]]).toEqual([name, expect.stringContaining(license)]);
    expect(row![2]).toMatch(/\w/);
    expect(row![4]).toMatch(/\S/);
  }
});

test('the table names nothing that is not shipped, and what only builds and tests is named below it', () => {
  const shipped = Object.keys(dependencies);
  for (const [, packages = ''] of rows)
    expect([packages, shipped.some((name) => namedIn(packages, name))]).toEqual([packages, true]);
  const below = chapter.split('For building')[1]!;
  for (const name of Object.keys(devDependencies))
    if (!name.startsWith('@types/')) expect([name, below.includes(name)]).toEqual([name, true]);
});

test('versions are exact, and the lock file holds each of them', () => {
  const lock = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')) as {
    packages: Record<string, { version?: string; integrity?: string }>;
  };
  for (const [name, version] of Object.entries({ ...dependencies, ...devDependencies })) {
    const locked = lock.packages[`node_modules/${name}`];
    expect([name, locked?.version]).toEqual([name, version]);
    expect(locked?.integrity).toMatch(/^sha512-/);
  }
});
