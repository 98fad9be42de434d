import { Refusal } from '../refusals/refusal.ts';

/** The kinds of file that can be read as a photo. */
export type PhotoFormat = 'jpeg' | 'png' | 'webp' | 'avif' | 'heic';

/**
 * Tells what a file is by its first bytes; its name and what the sender says of it count for nothing.
 *
 * Takes       the whole file.
 * Gives       the kind, when it can be read as a photo; otherwise a refusal that names the kind and the mend.
 */
export function kindOfFile(bytes: Uint8Array): PhotoFormat {
  if (bytes.length === 0)
    throw notAPhoto('an empty file', 'The file is empty; choose the photo again.');
  const photo = PHOTOS.find(({ test }) => test(bytes));
  if (photo !== undefined) return photo.format;
  const other = OTHERS.find(({ test }) => test(bytes));
  throw other === undefined
    ? notAPhoto('a file of a kind that is not known here', SAVE_AS)
    : notAPhoto(other.name, other.mend ?? SAVE_AS);
}

/** Says that a file cannot be read as a photo: `what` came instead, and what she can do. */
export function notAPhoto(what: string, mend: string): Refusal {
  return new Refusal({
    kind: 'not-a-photo',
    field: 'photo',
    received: what,
    mend,
    message: `Expected a photo (JPEG, HEIC, PNG, WebP or AVIF) but received ${what}`,
  });
}

const SAVE_AS = 'Save or export it as JPEG or PNG and send that.';

interface Photo {
  readonly format: PhotoFormat;
  readonly test: (bytes: Uint8Array) => boolean;
}

const PHOTOS: readonly Photo[] = [
  { format: 'jpeg', test: (bytes) => starts(bytes, '\xff\xd8\xff') },
  { format: 'png', test: (bytes) => starts(bytes, '\x89PNG\r\n\x1a\n') },
  {
    format: 'webp',
    test: (bytes) => starts(bytes, 'RIFF') && /^WEBPVP8[ LX]/.test(text(bytes, 8, 16)),
  },
  { format: 'avif', test: (bytes) => brands(bytes).some((brand) => /^avi[fs]$/.test(brand)) },
  {
    format: 'heic',
    test: (bytes) =>
      brands(bytes).some((brand) => /^(?:mif1|msf1|hei[cxms]|hev[cxms])$/.test(brand)),
  },
];

interface Other {
  readonly name: string;
  readonly test: (bytes: Uint8Array) => boolean;
  readonly mend?: string;
}

const STILL = 'Take a still photo, or save one picture of it as JPEG.';

const OTHERS: readonly Other[] = [
  { name: 'a GIF picture', test: (bytes) => starts(bytes, 'GIF8') },
  {
    name: 'a PDF document',
    test: (bytes) => text(bytes, 0, 1024).includes('%PDF-'),
    mend: 'Export the page as JPEG or PNG and send that.',
  },
  {
    name: "a TIFF picture or a camera's raw file",
    test: (bytes) => /^(?:II[*+]\0|MM\0[*+])/.test(text(bytes, 0, 4)),
  },
  {
    name: 'an SVG drawing',
    test: (bytes) => text(bytes, 0, 4096).toLowerCase().includes('<svg'),
    mend: 'Drawings cannot be read as photos; take a photo of the paper, or save the drawing as PNG.',
  },
  {
    name: 'a web page or other text',
    test: (bytes) => /^\s*<(?:!doctype|html|\?xml|\?php|head|body)/i.test(text(bytes, 0, 64)),
    mend: 'Choose the photo itself, not the page that shows it.',
  },
  {
    name: 'a packed file (gzip)',
    test: (bytes) => starts(bytes, '\x1f\x8b'),
    mend: 'Unpack it and send the photo in it.',
  },
  {
    name: 'a packed file (zip)',
    test: (bytes) => starts(bytes, 'PK\x03\x04'),
    mend: 'Unpack it and send the photo in it.',
  },
  { name: 'a BMP picture', test: (bytes) => starts(bytes, 'BM') },
  { name: 'a PSD picture', test: (bytes) => starts(bytes, '8BPS') },
  {
    name: 'a JPEG XL picture',
    test: (bytes) => starts(bytes, '\xff\x0a') || starts(bytes, '\0\0\0\x0cJXL '),
  },
  {
    name: 'a JPEG 2000 picture',
    test: (bytes) => starts(bytes, '\xff\x4f\xff\x51') || starts(bytes, '\0\0\0\x0cjP'),
  },
  { name: 'an icon file', test: (bytes) => /^\0\0[\x01\x02]\0/.test(text(bytes, 0, 4)) },
  { name: 'a video', test: (bytes) => text(bytes, 4, 8) === 'ftyp', mend: STILL },
  { name: 'a video', test: (bytes) => starts(bytes, '\x1a\x45\xdf\xa3'), mend: STILL },
  {
    name: 'a video',
    test: (bytes) => starts(bytes, 'RIFF') && text(bytes, 8, 12) === 'AVI ',
    mend: STILL,
  },
  {
    name: 'a program',
    test: (bytes) => starts(bytes, 'MZ') || starts(bytes, '\x7fELF'),
    mend: 'Choose a photo.',
  },
];

function starts(bytes: Uint8Array, signature: string): boolean {
  return text(bytes, 0, signature.length) === signature;
}

/** The bytes as one letter each. */
export function text(bytes: Uint8Array, from: number, to: number): string {
  return String.fromCharCode(...bytes.subarray(from, to));
}

/** The brands of an ISO media file (ISO/IEC 14496-12, 4.3): the major one, then those it also keeps to. */
function brands(bytes: Uint8Array): string[] {
  if (text(bytes, 4, 8) !== 'ftyp') return [];
  const length = new DataView(bytes.buffer, bytes.byteOffset, 4).getUint32(0);
  const end = Math.min(bytes.length, length, 128);
  const found = [text(bytes, 8, 12)];
  for (let at = 16; at + 4 <= end; at += 4) found.push(text(bytes, at, at + 4));
  return found;
}
