import { join } from 'node:path';
import { openFile } from './dialect.ts';

/** Keeps a data folder to one process; the operating system lets go of it when the process ends, however it ends. */
export interface FolderLock {
  readonly release: () => void;
}

/**
 * Takes the folder for this process: a writing transaction on a small file beside the database, held
 * open and never committed.
 *
 * Throws an Error that says what to do when another process has it.
 */
export async function lockFolder(folder: string): Promise<FolderLock> {
  const client = openFile(join(folder, 'in-use.db'), 0);
  try {
    await client.execute('create table if not exists in_use (id integer)');
    const held = await client.transaction('write');
    // Where nothing can be written, SQLite holds no lock either and says so only now.
    await held.execute('insert into in_use (id) values (1)');
    return {
      release: () => {
        held.close();
        client.close();
      },
    };
  } catch (fault) {
    client.close();
    if (isBusy(fault)) throw new FolderInUse(folder);
    throw fault;
  }
}

export class FolderInUse extends Error {
  override readonly name = 'FolderInUse';

  constructor(folder: string) {
    super(
      `Plyhue is already running on the data folder ${folder}. Stop that one first, or set DATA_DIR to another folder.`,
    );
  }
}

function isBusy(fault: unknown): boolean {
  return (
    fault instanceof Error && 'code' in fault && /SQLITE_(BUSY|LOCKED)/.test(String(fault.code))
  );
}
