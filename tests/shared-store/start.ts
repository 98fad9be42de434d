/** Starts PostgreSQL and an S3 server for the tests that run on a shared store, and ends both after them. */
import type { TestProject } from 'vitest/node';
import { postgresPrograms } from './postgres-programs.ts';
import { startServers } from './servers.ts';

declare module 'vitest' {
  interface ProvidedContext {
    shared: { readonly database: string; readonly endpoint: string } | null;
  }
}

export default async function start(project: TestProject): Promise<() => Promise<void>> {
  const programs = postgresPrograms();
  if (programs === null) throw new Error('PostgreSQL was there a moment ago');
  const servers = await startServers(programs);
  const { database, endpoint } = servers;
  project.provide('shared', { database, endpoint });
  return () => servers.stop();
}
