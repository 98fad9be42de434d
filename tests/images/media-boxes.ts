/** Boxes of ISO media files (ISO/IEC 14496-12, 4.2), read and written: size, name, content. */

/** Where a box and its content begin, and where it ends. */
export interface Box {
  readonly name: string;
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/** Content of `meta`, `iloc`, `ipma` and others begins with a version and flags. */
export const FULL = 4;

export function boxesIn(bytes: Uint8Array, from: number, to: number): Box[] {
  const view = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const boxes: Box[] = [];
  for (let at = from; at + 8 <= to;) {
    const size = view.readUInt32BE(at);
    boxes.push({ name: view.toString('latin1', at + 4, at + 8), at, from: at + 8, to: at + size });
    at += size;
  }
  return boxes;
}

export function box(bytes: Uint8Array, name: string, from: number, to: number): Box {
  const found = boxesIn(bytes, from, to).find((one) => one.name === name);
  if (found === undefined) throw new Error(`Expected a box ${name} in the file`);
  return found;
}

type Part = Uint8Array | string | readonly number[];

export function written(name: string, ...parts: readonly Part[]): Buffer {
  const content = Buffer.concat(
    parts.map((part) =>
      typeof part === 'string' ? Buffer.from(part, 'latin1') : Buffer.from(part),
    ),
  );
  return Buffer.concat([uint32(content.length + 8), Buffer.from(name, 'latin1'), content]);
}

export function uint16(value: number): Buffer {
  const bytes = Buffer.alloc(2);
  bytes.writeUInt16BE(value);
  return bytes;
}

export function uint32(value: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32BE(value);
  return bytes;
}
