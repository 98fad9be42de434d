/** A thread that calls the functions of one module. */
import { Piscina } from 'piscina';
import type { Workers } from './line.ts';
import { READING } from './running-code.ts';

/** Our own work, which cannot break as a decoder can; it is stopped when it takes too long. */
export function openThread(module: URL): Workers {
  const pool = new Piscina({
    filename: module.href,
    execArgv: [...READING],
    minThreads: 1,
    maxThreads: 1,
    closeTimeout: 60_000,
    resourceLimits: { maxOldGenerationSizeMb: 768 },
  });
  return {
    run: (name, task, milliseconds) =>
      pool.run(task, { name, signal: AbortSignal.timeout(milliseconds) }),
    close: () => pool.close(),
  };
}
