import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { postgresPrograms } from './shared-store/postgres-programs.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
// Limits say that a test hangs, not that it is slow: a busy machine must not fail one.
const patience = {
  testTimeout: 600_000,
  hookTimeout: 600_000,
  expect: { poll: { timeout: 120_000 } },
};

const onFolder = {
  root,
  test: {
    name: 'data folder',
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/shared-store/**'],
    globalSetup: ['tests/compiled/start.ts'],
    ...patience,
  },
};

/** The same tests of what is kept and answered, on PostgreSQL and an S3 store. */
const onSharedStore = {
  root,
  test: {
    name: 'shared store',
    include: [
      'tests/store/store.test.ts',
      'tests/http/{pads,photos,uploads,sheets,plans,supplies,layouts,events,pad-files}.test.ts',
      'tests/shared-store/*.test.ts',
    ],
    globalSetup: ['tests/compiled/start.ts', 'tests/shared-store/start.ts'],
    ...patience,
  },
};

const shared = postgresPrograms() !== null;
if (!shared)
  console.warn('No PostgreSQL on this machine: the tests on a shared store are skipped.');

export default defineConfig({
  root,
  // One file holds all journeys and waits more than it works: never let the others wait for it.
  test: {
    maxWorkers: Math.max(2, availableParallelism() - 1),
    projects: shared ? [onFolder, onSharedStore] : [onFolder],
  },
});
