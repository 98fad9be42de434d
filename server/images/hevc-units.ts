/**
 * Whether bytes are what HEVC pictures in a file are made of: units, each with its length before it.
 *
 * Within a unit neither 00 00 00 nor 00 00 01 nor 00 00 02 may stand, so a stretch that was never written, or was
 * overwritten with nothing, is told without decoding it. Other damage may look like HEVC.
 *
 * Takes       the bytes of one coded picture, with lengths of four bytes, as cameras write them.
 * Source      ISO/IEC 14496-15, 8.3.2 (lengths); ITU-T H.265, 7.4.2.1 (what may not stand in a unit).
 */
export function isWhole(bytes: Uint8Array): boolean {
  const view = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 0;
  while (at + LENGTH <= view.length) {
    const end = at + LENGTH + view.readUInt32BE(at);
    const unit = view.subarray(at + LENGTH, end);
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

const LENGTH = 4;
const HEADER = 2;
const FORBIDDEN = [0, 1, 2].map((last) => Buffer.of(0, 0, last));
