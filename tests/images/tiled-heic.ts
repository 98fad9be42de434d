import { FULL, box, boxesIn, uint16, uint32, written } from './media-boxes.ts';

/** A picture as it lies in a file: how it is coded, its size, its bytes. */
interface Coded {
  readonly hvcC: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

export interface TiledWishes {
  readonly columns: number;
  readonly rows: number;
  /** The first of the pictures that are tiles; 0 when left out. */
  readonly first?: number;
  /** What is shown of the tiles, from their upper left corner. */
  readonly width: number;
  readonly height: number;
  /** Quarter turns against the clock (`irot`). */
  readonly quarters?: 0 | 1 | 2 | 3;
  /** Mirrored after it was turned (`imir`): top and bottom change places (0), or left and right (1). */
  readonly mirror?: 0 | 1;
  /** The content of the photo's `colr` box; that of the small pictures beside it says sRGB. */
  readonly colour?: Uint8Array;
  /** A small picture, and one of distances, both before the photo in the list of properties. */
  readonly thumbnail?: number;
  readonly depth?: number;
  /** An Exif block that says, as phones write it beside `irot`, that the photo is to be turned. */
  readonly orientation?: number;
}

/** Colour by code points (ITU-T H.273): primaries, transfer curve, matrix, full range. */
export function nclx(primaries: number): Buffer {
  return Buffer.concat([
    Buffer.from('nclx'),
    uint16(primaries),
    uint16(13),
    uint16(6),
    Buffer.of(0x80),
  ]);
}

/**
 * A HEIC photo as phones write it: a grid of tiles (ISO/IEC 23008-12, 6.6.2.3), what hangs over cut off.
 *
 * Takes       the pictures of a file: the first four are tiles, row by row, and begin anew where there are more.
 * Source      boxes: ISO/IEC 14496-12 (meta 8.11.1, iloc 8.11.3, pitm 8.11.4, iinf 8.11.6, iref 8.11.12) and
 *             ISO/IEC 23008-12 (iprp 9.3, irot 6.5.10, imir 6.5.12, auxC 6.5.8).
 */
export function tiledHeic(bytes: Uint8Array, wishes: TiledWishes): Buffer {
  const {
    columns,
    rows,
    width,
    height,
    first = 0,
    quarters = 0,
    mirror,
    colour,
    orientation,
  } = wishes;
  const all = picturesIn(bytes);
  const tiles = Array.from({ length: columns * rows }, (_, at) => all[(first + at) % MOST_TILES]!);
  const beside = [wishes.thumbnail, wishes.depth].flatMap((at) =>
    at === undefined ? [] : all[at]!,
  );
  const grid = tiles.length + beside.length + 1;
  const properties: Buffer[] = [];
  const propertiesOf = new Map<number, number[]>();
  const keep = (item: number, property: Buffer): void => {
    const known = properties.findIndex((one) => one.equals(property));
    if (known < 0) properties.push(property);
    const number = known < 0 ? properties.length : known + 1;
    propertiesOf.set(item, [...(propertiesOf.get(item) ?? []), number]);
  };
  const coded = [...beside, ...tiles];
  for (const [at, { hvcC, width: across, height: down }] of coded.entries()) {
    keep(at + 1, Buffer.from(hvcC));
    keep(at + 1, ispe(across, down));
    if (at < beside.length) keep(at + 1, written('colr', nclx(1)));
  }
  const depth = wishes.depth === undefined ? null : beside.length;
  if (depth !== null) keep(depth, written('auxC', uint32(0), 'urn:mpeg:hevc:2015:auxid:2\0'));
  keep(grid, ispe(width, height));
  if (colour !== undefined) keep(grid, written('colr', colour));
  if (quarters !== 0) keep(grid, written('irot', [quarters]));
  if (mirror !== undefined) keep(grid, written('imir', [mirror]));

  const exif = orientation === undefined ? [] : [exifOf(orientation)];
  const gridData = [0, 1, rows - 1, columns - 1, ...uint32(width), ...uint32(height)];
  const data = [...coded.map((one) => one.data), null, ...exif];
  const types = [...coded.map(() => 'hvc1'), 'grid', ...exif.map(() => 'Exif')];
  const references = [
    written(
      'dimg',
      uint16(grid),
      uint16(tiles.length),
      ...tiles.map((_, at) => uint16(beside.length + at + 1)),
    ),
    ...(wishes.thumbnail === undefined
      ? []
      : [written('thmb', uint16(1), uint16(1), uint16(grid))]),
    ...(depth === null ? [] : [written('auxl', uint16(depth), uint16(1), uint16(grid))]),
    ...exif.map(() => written('cdsc', uint16(grid + 1), uint16(1), uint16(grid))),
  ];
  const ftyp = written('ftyp', 'heic', uint32(0), 'mif1heic');
  const metaAt = (dataAt: number): Buffer => {
    let next = dataAt;
    const places = data.map((one, at) => {
      const [method, from, length] = one === null ? [1, 0, gridData.length] : [0, next, one.length];
      next += one?.length ?? 0;
      return [uint16(at + 1), uint16(method), uint16(0), uint16(1), uint32(from), uint32(length)];
    });
    return written(
      'meta',
      uint32(0),
      written('hdlr', uint32(0), uint32(0), 'pict', uint32(0), uint32(0), uint32(0), [0]),
      written('pitm', uint32(0), uint16(grid)),
      written('iloc', uint32(0x01000000), [0x44, 0], uint16(places.length), ...places.flat()),
      written(
        'iinf',
        uint32(0),
        uint16(types.length),
        ...types.map((type, at) => infe(at + 1, type, isTile(at))),
      ),
      written('iref', uint32(0), ...references),
      written(
        'iprp',
        written('ipco', ...properties),
        written('ipma', uint32(0), uint32(propertiesOf.size), ...[...propertiesOf].map(associated)),
      ),
      written('idat', gridData),
    );
  };
  const isTile = (at: number): boolean => at >= beside.length && at < coded.length;
  const dataAt = ftyp.length + metaAt(0).length + 8;
  return Buffer.concat([
    ftyp,
    metaAt(dataAt),
    written('mdat', ...data.flatMap((one) => one ?? [])),
  ]);
}

const MOST_TILES = 4;

/** The pictures of a file that are coded by themselves, in their order. */
export function picturesIn(bytes: Uint8Array): Coded[] {
  const view = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const meta = box(bytes, 'meta', 0, bytes.length);
  const inMeta = (name: string): number => box(bytes, name, meta.from + FULL, meta.to).from;
  const iprp = box(bytes, 'iprp', meta.from + FULL, meta.to);
  const ipco = box(bytes, 'ipco', iprp.from, iprp.to);
  const properties = boxesIn(bytes, ipco.from, ipco.to);
  const places = new Map<number, Uint8Array>();
  let at = inMeta('iloc') + FULL + 2;
  const count = view.readUInt16BE(at);
  at += 2;
  // As heif-enc writes it: version 0, four bytes for where, how much and the base of both, one stretch each.
  for (let n = 0; n < count; n++, at += 18) {
    const [base, from, length] = [4, 10, 14].map((offset) => view.readUInt32BE(at + offset)) as [
      number,
      number,
      number,
    ];
    places.set(view.readUInt16BE(at), bytes.subarray(base + from, base + from + length));
  }
  at = box(bytes, 'ipma', iprp.from, iprp.to).from + FULL;
  const items = view.readUInt32BE(at);
  at += 4;
  return Array.from({ length: items }, (): Coded => {
    const item = view.readUInt16BE(at);
    const own = [...view.subarray(at + 3, at + 3 + view[at + 2]!)].map(
      (one) => properties[(one & 0x7f) - 1]!,
    );
    at += 3 + own.length;
    const [hvcC, size] = ['hvcC', 'ispe'].map((name) => own.find((one) => one.name === name)!);
    return {
      hvcC: bytes.subarray(hvcC!.at, hvcC!.to),
      width: view.readUInt32BE(size!.from + FULL),
      height: view.readUInt32BE(size!.from + FULL + 4),
      data: places.get(item)!,
    };
  });
}

function ispe(width: number, height: number): Buffer {
  return written('ispe', uint32(0), uint32(width), uint32(height));
}

/** An item; those that are only parts of a picture are hidden. */
function infe(item: number, type: string, hidden: boolean): Buffer {
  return written('infe', uint32(0x02000000 + (hidden ? 1 : 0)), uint16(item), uint16(0), type, [0]);
}

/** Which properties an item has; all must be heeded. */
function associated([item, numbers]: readonly [number, readonly number[]]): Buffer {
  return Buffer.concat([
    uint16(item),
    Buffer.of(numbers.length),
    ...numbers.map((one) => Buffer.of(0x80 | one)),
  ]);
}

/** CIPA DC-008 (Exif 2.32): one directory with one entry, the orientation. */
function exifOf(orientation: number): Buffer {
  const header = Buffer.concat([Buffer.from('MM\0*', 'latin1'), uint32(8), uint16(1)]);
  const entry = Buffer.concat([
    uint16(0x0112),
    uint16(3),
    uint32(1),
    uint16(orientation),
    uint16(0),
  ]);
  return Buffer.concat([uint32(6), Buffer.from('Exif\0\0', 'latin1'), header, entry, uint32(0)]);
}
