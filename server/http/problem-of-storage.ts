import type { Problem } from '../contract/values.ts';
import { problem } from './problem.ts';
import type { ProblemKind } from './problem-kinds.ts';

/** What a disk or a database refuses, by the codes of the system, of SQLite and of PostgreSQL (appendix A). */
const OF_STORAGE: readonly (readonly [RegExp, ProblemKind, string, string])[] = [
  [
    /^(ENOSPC|EDQUOT|SQLITE_FULL|53100)/,
    'disk-full',
    'The disk that holds the data folder is full, so this was not saved. All that was saved before is safe.',
    'Free some space, then send it again.',
  ],
  [
    /^(EROFS|EACCES|EPERM|SQLITE_READONLY|SQLITE_CANTOPEN|SQLITE_PERM)/,
    'cannot-write',
    'The data folder cannot be written, so this was not saved.',
    'Allow Plyhue to write there, or start it with another DATA_DIR.',
  ],
  [
    /^(ECONNREFUSED|ECONNRESET|EPIPE|ETIMEDOUT|ENOTFOUND|EAI_AGAIN|08\w{3}|57P0\d|53[234]00)/,
    'busy',
    'The database or the store of the files could not be reached, so this was not done.',
    'Try again in a moment; nothing that was saved is lost.',
  ],
  [
    /^(SQLITE_CORRUPT|SQLITE_NOTADB|SQLITE_IOERR|EIO)/,
    'damaged',
    'The data folder is damaged: the database could not be read.',
    'Stop Plyhue and bring the folder back from a backup.',
  ],
];

export function problemOfStorage(fault: unknown): Problem | null {
  for (let cause = fault; cause instanceof Error; cause = cause.cause) {
    const code = 'code' in cause ? String(cause.code) : '';
    const known = OF_STORAGE.find(([pattern]) => pattern.test(code));
    if (known !== undefined) return problem(known[1], { detail: known[2], mend: known[3] });
  }
  return null;
}
