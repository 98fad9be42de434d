/** Settings from the environment, checked at the start. */
import { fileURLToPath } from 'node:url';
import { resolve } from 'node:path';
import { z } from 'zod';

const PORT_MEND = 'a whole number from 0 to 65535';

const Settings = z.object({
  PORT: z
    .string()
    .regex(/^\d{1,5}$/, PORT_MEND)
    .transform(Number)
    .pipe(z.number().max(65535, PORT_MEND))
    .default(7443),
  HOST: z
    .string()
    .regex(/^[\w.:-]+$/, 'a name or an address to listen on, like 127.0.0.1')
    .default('127.0.0.1'),
  DATA_DIR: z.string().min(1, 'the path of a folder').optional(),
  DEMO: z.enum(['on', 'off'], '"on" or "off"').default('on'),
});

export interface ServiceSettings {
  readonly port: number;
  readonly host: string;
  readonly dataFolder: string;
  /** Whether to read the demo pad when the data folder is new. */
  readonly demo: boolean;
}

export class WrongSetting extends Error {
  override readonly name = 'WrongSetting';
}

/** Reads PORT, HOST, DATA_DIR and DEMO; throws WrongSetting with a sentence for each that cannot be used. */
export function readSettings(
  environment: Readonly<Record<string, string | undefined>>,
): ServiceSettings {
  const given = Object.fromEntries(
    Object.entries(environment).filter(([, value]) => value !== undefined && value !== ''),
  );
  const read = Settings.safeParse(given);
  if (!read.success) {
    const faults = read.error.issues.map(
      ({ path, message }) =>
        `Expected ${message} for ${String(path[0])} but received "${String(given[String(path[0])])}".`,
    );
    throw new WrongSetting(faults.join('\n'));
  }
  const { PORT, HOST, DATA_DIR, DEMO } = read.data;
  const dataFolder = DATA_DIR === undefined ? inRoot('.data') : resolve(DATA_DIR);
  return { port: PORT, host: HOST, dataFolder, demo: DEMO === 'on' };
}

/** A path from the project's root; this file lies in server/, or in dist/server/ when it is compiled. */
export function inRoot(...parts: readonly string[]): string {
  const up = import.meta.url.endsWith('.js') ? '../..' : '..';
  return resolve(fileURLToPath(new URL(up, import.meta.url)), ...parts);
}
