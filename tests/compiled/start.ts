/** Compiles the service once for all tests that run it in processes of their own. */
import { rmSync } from 'node:fs';
import type { TestProject } from 'vitest/node';
import { compileAll } from './compile.ts';

declare module 'vitest' {
  interface ProvidedContext {
    compiled: string;
  }
}

export default async function start(project: TestProject): Promise<() => void> {
  const folder = await compileAll();
  project.provide('compiled', folder);
  return () => rmSync(folder, { recursive: true, force: true });
}
