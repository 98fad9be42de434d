/**
 * Copies the data folder, or makes it again from a copy:
 *
 *   node dist/server/keep-safe.js backup FOLDER     also while Plyhue runs
 *   node dist/server/keep-safe.js restore FOLDER    into an empty DATA_DIR
 */
import { faultInWords } from './fault-in-words.ts';
import { WrongSetting, readSettings } from './settings.ts';
import { backUp, restore } from './store/back-up.ts';

const [verb, folder] = process.argv.slice(2);
try {
  if (folder === undefined || (verb !== 'backup' && verb !== 'restore'))
    throw new WrongSetting(
      'Say `backup FOLDER` or `restore FOLDER`, with an empty folder to copy to.',
    );
  const { dataFolder, shared } = readSettings(process.env);
  if (shared !== null)
    throw new WrongSetting(
      'These commands copy a data folder. For a shared store use pg_dump and the copies of the bucket; for one pad, save it as a file.',
    );
  const { files } =
    verb === 'backup' ? await backUp(dataFolder, folder) : await restore(folder, dataFolder);
  console.log(
    `Done: the database and ${files} files are in ${verb === 'backup' ? folder : dataFolder}.`,
  );
} catch (fault) {
  console.error(faultInWords(fault));
  process.exit(1);
}
