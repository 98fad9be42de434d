import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const find = createRequire(import.meta.url);
const FILES = '@fontsource/atkinson-hyperlegible/files/atkinson-hyperlegible';

/** The font of the guide (Atkinson Hyperlegible, SIL Open Font License): a letter I and l and 1 are told apart. */
export interface Fonts {
  readonly plain: Uint8Array;
  readonly bold: Uint8Array;
  /** Letters that the first two lack, such as those of central Europe. */
  readonly plainMore: Uint8Array;
  readonly boldMore: Uint8Array;
}

export function readFonts(): Fonts {
  const read = (part: string): Uint8Array => readFileSync(find.resolve(`${FILES}-${part}.woff`));
  return {
    plain: read('latin-400-normal'),
    bold: read('latin-700-normal'),
    plainMore: read('latin-ext-400-normal'),
    boldMore: read('latin-ext-700-normal'),
  };
}
