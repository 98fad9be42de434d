/**
 * Whether bytes are what HEVC pictures in a file are made of: units, each with its length before it.
 *
 * Within a unit neither 00 00 00 nor 00 00 01 nor 00 00 02 may stand, so a stretch that was never written, or was
 * overwritten with nothing, is told without decoding it. Other damage may look like HEVC.
 *
 * Takes       the bytes of one coded picture, and how many bytes each length takes: 1, 2 or 4.
 * Source      ISO/IEC 14496-15, 8.3.2 (lengths); ITU-T H.265, 7.4.2.1 (what may not stand in a unit).
 */
export function isWhole(bytes: Uint8Array, lengthSize: number): boolean {
  const view = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 0;
  while (at + lengthSize <= view.length) {
    const from = at + lengthSize;
    const end = from + view.readUIntBE(at, lengthSize);
    const unit = view.subarray(from, end);
    if (
      end > view.length ||
      unit.length < HEADER ||
      FORBIDDEN.some((three) => unit.includes(three))
    )
      return false;
    at = end;
  }
  return at > 0 && at === view.length;
}

const HEADER = 2;
const FORBIDDEN = [0, 1, 2].map((last) => Buffer.of(0, 0, last));

/**
 * How many bytes the lengths of units take, as the `hvcC` boxes at the front of a file say, each answer once; four, as
 * cameras write them, where none says.
 *
 * Source      ISO/IEC 14496-15, 8.3.3.1 (lengthSizeMinusOne, the last two bits of the 22nd byte; from memory).
 */
export function lengthSizesIn(file: Uint8Array): number[] {
  const view = Buffer.from(file.buffer, file.byteOffset, Math.min(file.byteLength, FRONT));
  const sizes = new Set<number>();
  for (let at = view.indexOf(NAME); at >= 0; at = view.indexOf(NAME, at + 1)) {
    const last = view[at + NAME.length + LENGTH_SIZE];
    if (last !== undefined) sizes.add((last & 3) + 1);
  }
  return sizes.size === 0 ? [4] : [...sizes];
}

const NAME = 'hvcC';
const LENGTH_SIZE = 21;
/** Phones keep what describes their pictures in front. */
const FRONT = 1 << 20;
