import { WrongSetting } from './settings.ts';
import { CannotCopy } from './store/back-up.ts';
import { FolderInUse } from './store/folder-lock.ts';

/** Faults whose message was written for her. */
const SPOKEN = [WrongSetting, FolderInUse, CannotCopy];

/** What stopped a start, a backup or a restore, in a sentence that says what to do. */
export function faultInWords(fault: unknown): string {
  if (SPOKEN.some((spoken) => fault instanceof spoken)) return (fault as Error).message;
  if (!(fault instanceof Error)) return String(fault);
  const code = 'code' in fault ? String(fault.code) : '';
  if (code === 'EADDRINUSE')
    return 'The port is already taken. Stop what runs there, or choose another: PORT=7444 npm start';
  if (code === 'EADDRNOTAVAIL')
    return 'HOST is not an address of this computer. Leave it out to listen on 127.0.0.1.';
  if (/^(ECONNREFUSED|ENOTFOUND|EAI_AGAIN|28|3D000)/.test(code))
    return `Expected a database and a bucket that answer at DATABASE_URL and PHOTOS_URL: ${fault.message}`;
  if (/^(ENOSPC|EDQUOT|SQLITE_FULL)/.test(code))
    return 'The disk is full. Free some space and start again; all that was saved before is safe.';
  if (code === 'EACCES' || code === 'EROFS' || code === 'EPERM')
    return `Expected a data folder and a port that may be used, but this is not allowed: ${fault.message}`;
  if (/SQLITE_(CORRUPT|NOTADB|IOERR)/.test(code))
    return 'The database in the data folder is damaged. Bring the folder back from a backup, or start with another DATA_DIR.';
  if (/SQLITE_(READONLY|CANTOPEN|PERM)/.test(code))
    return 'The data folder cannot be written. Allow it, or start with another DATA_DIR.';
  return fault.stack ?? fault.message;
}
