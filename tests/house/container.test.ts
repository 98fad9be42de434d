import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');

/** The lines of the container file, each whole, without remarks. */
const lines = readFileSync(join(ROOT, 'Containerfile'), 'utf8')
  .replace(/\\\n\s*/g, '')
  .split('\n')
  .filter((line) => /^[A-Z]+ /.test(line));

function all(word: string): string[] {
  return lines
    .filter((line) => line.startsWith(`${word} `))
    .map((line) => line.slice(word.length + 1));
}

describe('the container file', () => {
  test('begins at the official image of the Node.js that the package asks for', () => {
    const { engines } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
      engines: { node: string };
    };
    const [wanted] = /\d+/.exec(engines.node)!;
    for (const image of all('FROM'))
      expect(image).toMatch(new RegExp(`^docker\\.io/library/node:${wanted}-[a-z-]+( AS build)?$`));
  });

  test('copies only what is there and what is not kept from it', () => {
    const kept = readFileSync(join(ROOT, '.containerignore'), 'utf8').split('\n');
    const sources = all('COPY')
      .filter((words) => !words.startsWith('--from='))
      .flatMap((words) => words.split(' ').slice(0, -1));
    for (const source of sources) {
      const [folder, name] = source.split('/');
      expect(kept).toContain(`!${folder}`);
      if (name?.startsWith('*') === true)
        expect(readdirSync(join(ROOT, folder!)).some((file) => file.endsWith(name.slice(1)))).toBe(
          true,
        );
      else expect([source, existsSync(join(ROOT, source))]).toEqual([source, true]);
    }
  });

  test('builds by the lock file, runs as another than root, keeps its data outside and tells how it is', () => {
    expect(all('RUN')[0]).toMatch(/^npm ci /);
    const user = lines.indexOf('USER node');
    expect(user).toBeGreaterThan(lines.findLastIndex((line) => line.startsWith('RUN ')));
    expect(lines.findIndex((line) => line.startsWith('CMD '))).toBeGreaterThan(user);
    expect(all('VOLUME')).toEqual(['/data']);
    expect(all('HEALTHCHECK')[0]).toContain('/api/health/live');
  });
});
