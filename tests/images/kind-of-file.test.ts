import { describe, expect, it } from 'vitest';
import { kindOfFile } from '../../server/images/kind-of-file.ts';
import { Refusal } from '../../server/refusals/refusal.ts';

const bytes = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

describe('the kind of a file is told by its first bytes', () => {
  it.each([
    ['jpeg', '\xff\xd8\xff\xe0\0\x10JFIF'],
    ['png', '\x89PNG\r\n\x1a\n\0\0\0\rIHDR'],
    ['webp', 'RIFF\x10\0\0\0WEBPVP8 '],
    ['avif', '\0\0\0\x1cftypavif\0\0\0\0avifmif1miaf'],
    ['avif', '\0\0\0\x1cftypmif1\0\0\0\0mif1avifmiaf'],
    ['heic', '\0\0\0\x18ftypheic\0\0\0\0mif1heic'],
  ])('knows a %s', (format, text) => {
    expect(kindOfFile(bytes(text))).toBe(format);
  });

  it.each([
    ['empty', ''],
    ['GIF', 'GIF89a'],
    ['PDF', '%PDF-1.7'],
    ['TIFF', 'II*\0\x08\0\0\0'],
    ['SVG', '<?xml version="1.0"?>\n<svg xmlns="http://www.w3.org/2000/svg">'],
    ['web page', '<!doctype html><title>x</title>'],
    ['gzip', '\x1f\x8b\x08'],
    ['video', '\0\0\0\x18ftypmp42\0\0\0\0mp42isom'],
    ['PSD', '8BPS\0\x01'],
    ['program', 'MZ\x90'],
    ['not known', 'hello'],
  ])('refuses %s, naming it and the mend', (name, text) => {
    const refusal = refusalOf(() => kindOfFile(bytes(text)));
    expect(refusal.kind).toBe('not-a-photo');
    expect(refusal.message).toContain(name);
    expect(refusal.mend).not.toBe('');
  });
});

function refusalOf(act: () => unknown): Refusal {
  try {
    act();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('Nothing was refused.');
}
