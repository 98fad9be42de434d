import { FULL, box, boxesIn } from './media-boxes.ts';

/**
 * A HEIC file that says its picture is to be turned, as phones write it when they are held upright: with a property
 * `irot` (ISO/IEC 23008-12, 6.5.10) for the one picture in it.
 *
 * Takes       a file with one picture whose data follow `meta`, and quarter turns against the clock, 1 to 3.
 */
export function turnedHeic(bytes: Uint8Array, quarters: number): Uint8Array {
  const meta = box(bytes, 'meta', 0, bytes.length);
  const iprp = box(bytes, 'iprp', meta.from + FULL, meta.to);
  const ipco = box(bytes, 'ipco', iprp.from, iprp.to);
  const ipma = box(bytes, 'ipma', iprp.from, iprp.to);
  const iloc = box(bytes, 'iloc', meta.from + FULL, meta.to);
  const irot = [0, 0, 0, 9, ...Buffer.from('irot'), quarters];
  // One entry: item, how many properties, one byte each, of which the highest bit says that it must be heeded.
  const countAt = ipma.from + FULL + 4 + 2;
  const properties = boxesIn(bytes, ipco.from, ipco.to).length;
  const out = Buffer.concat([
    bytes.subarray(0, ipco.to),
    Uint8Array.from(irot),
    bytes.subarray(ipco.to, ipma.to),
    Uint8Array.of(0x80 | (properties + 1)),
    bytes.subarray(ipma.to),
  ]);
  const added = irot.length + 1;
  const grow = (at: number, by: number): number => out.writeUInt32BE(out.readUInt32BE(at) + by, at);
  grow(meta.at, added);
  grow(iprp.at, added);
  grow(ipco.at, irot.length);
  grow(ipma.at + irot.length, 1);
  out[countAt + irot.length]! += 1;
  // Sizes of numbers, count of items, item, data reference, then where its data begin (ISO/IEC 14496-12, 8.11.3).
  grow(iloc.from + FULL + 2 + 2 + 2 + 2, added);
  return out;
}
