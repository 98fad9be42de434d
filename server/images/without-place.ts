import { text } from './kind-of-file.ts';

/**
 * The same photo without the place where it was taken: a photo is kept as it came, and is handed on in a pad's
 * file, so what it tells of her home is blanked before it is kept. Its pixels and its length stay, and what
 * the reading asks for (orientation, make, profile); of a PNG the notes are left out.
 *
 * Takes       the bytes of a photo, or of anything else.
 * Gives       a changed copy, or the same bytes where they tell of no place.
 * Good up to  the places that cameras write: the GPS directory of Exif, XMP, IPTC. A maker's own notes are
 *             not understood.
 * Source      Exif 2.32, 4.6.3 (tag 0x8825) in TIFF 6.0, section 2; XMP part 3; PNG, third edition, 11.3.
 */
export function withoutPlace(bytes: Buffer): Buffer {
  if (text(bytes, 0, 8) === PNG) return withoutNotes(bytes);
  const changed: Buffer[] = [];
  const copy = (): Buffer => {
    if (changed.length === 0) changed.push(Buffer.from(bytes));
    return changed[0]!;
  };
  for (const start of placesOf(bytes, TIFF_STARTS)) blankGps(bytes, start, copy);
  for (let at = bytes.indexOf(XMP_START); at >= 0; at = bytes.indexOf(XMP_START, at)) {
    const end = bytes.indexOf(XMP_END, at);
    if (end < 0) break;
    copy().fill(' ', at, end + XMP_END.length);
    at = end + XMP_END.length;
  }
  for (const start of placesOf(bytes, [IPTC])) {
    const length = start >= 2 ? bytes.readUInt16BE(start - 2) - 2 : 0;
    const end = Math.min(bytes.length, start + length);
    if (length > IPTC.length) copy().fill(0, start + IPTC.length, end);
  }
  return changed[0] ?? bytes;
}

const PNG = '\x89PNG\r\n\x1a\n';
/** Either order of bytes, with the first directory right behind, as cameras write it. */
const TIFF_STARTS = ['II*\0\x08\0\0\0', 'MM\0*\0\0\0\x08'];
const XMP_START = '<x:xmpmeta';
const XMP_END = '</x:xmpmeta>';
const IPTC = 'Photoshop 3.0\0';

/** A photo tells its place once or twice; a file that repeats itself is made to keep the service busy. */
const MOST_PLACES = 8;

function placesOf(bytes: Buffer, signatures: readonly string[]): number[] {
  return signatures.flatMap((signature) => {
    const found: number[] = [];
    const wanted = Buffer.from(signature, 'latin1');
    let at = bytes.indexOf(wanted);
    while (at >= 0 && found.length < MOST_PLACES) {
      found.push(at);
      at = bytes.indexOf(wanted, at + wanted.length);
    }
    return found;
  });
}

const GPS = 0x8825;
const ENTRY = 12;
/** Entries of a directory; cameras write some dozens. */
const MOST_ENTRIES = 512;
/** Bytes of one value, by the types of TIFF 6.0. */
const BYTES_OF_TYPE = [0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8];

function blankGps(bytes: Buffer, start: number, copy: () => Buffer): void {
  const little = bytes[start] === 0x49;
  const short = (at: number): number => (little ? bytes.readUInt16LE(at) : bytes.readUInt16BE(at));
  const long = (at: number): number => (little ? bytes.readUInt32LE(at) : bytes.readUInt32BE(at));
  const entriesAt = (directory: number): number[] =>
    directory + 2 > bytes.length
      ? []
      : Array.from(
          { length: Math.min(MOST_ENTRIES, short(directory)) },
          (_, at) => directory + 2 + ENTRY * at,
        ).filter((entry) => entry + ENTRY <= bytes.length);
  const entry = entriesAt(start + 8).find((one) => short(one) === GPS);
  if (entry !== undefined) {
    const directory = start + long(entry + 8);
    for (const told of entriesAt(directory)) {
      const size = (BYTES_OF_TYPE[short(told + 2)] ?? 0) * long(told + 4);
      const value = start + long(told + 8);
      if (size > 4 && value + size <= bytes.length) copy().fill(0, value, value + size);
      copy().fill(0, told, told + ENTRY);
    }
    if (directory + 2 <= bytes.length) copy().fill(0, directory, directory + 2);
  }
}

/** Chunks in which a PNG tells of other things than its pixels. */
const NOTES = ['eXIf', 'tEXt', 'zTXt', 'iTXt'];

function withoutNotes(png: Buffer): Buffer {
  const kept: Buffer[] = [png.subarray(0, PNG.length)];
  let left = 0;
  for (let at = PNG.length; at < png.length;) {
    // Length, name and checksum take twelve bytes; a chunk that is cut off is kept as it is.
    const end = at + 12 <= png.length ? at + 12 + png.readUInt32BE(at) : png.length;
    const chunk = png.subarray(at, end);
    if (end <= png.length && NOTES.includes(text(png, at + 4, at + 8))) left += 1;
    else kept.push(chunk);
    at = end;
  }
  return left === 0 ? png : Buffer.concat(kept);
}
