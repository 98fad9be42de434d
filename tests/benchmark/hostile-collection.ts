import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Figure } from './figure.ts';
import { answersInWords } from './hostile-answers.ts';
import { sendPhoto, startPad, startService } from './running-service.ts';
import type { Sent } from './running-service.ts';

/** Malformed and hostile pictures of other projects' tests, where they lie beside this one. */
const COLLECTION = fileURLToPath(new URL('../../../shared/bad-images', import.meta.url));
const WHAT = 'collected bad pictures';

export async function collectionFigures(folder: string): Promise<Figure[]> {
  if (!existsSync(COLLECTION))
    return [
      {
        name: `${WHAT}: no clear answer`,
        value: Number.NaN,
        unit: '',
        bar: { at: 'most', value: 0 },
        note: 'skipped, there is no folder ../shared/bad-images',
      },
    ];
  const files = readdirSync(COLLECTION, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name));
  const service = await startService(folder);
  try {
    const pad = await startPad(service.address);
    const sent: Sent[] = [];
    for (const [at, file] of files.entries())
      sent.push(await sendPhoto(service.address, pad, readFileSync(file), `file ${at}`));
    return await answersInWords({ what: WHAT, note: `${files.length} files`, sent, service });
  } finally {
    await service.stop();
  }
}
