import libheif from 'libheif-js/wasm-bundle.js';

/** How libheif is called: numbers and errors come through its memory. */

export function uint32At(at: number): number {
  const { HEAPU8 } = libheif;
  return new DataView(HEAPU8.buffer, at, 4).getUint32(0, true);
}

/**
 * There is not enough memory for a photo, which may be as whole as any, or damaged so that it asks for too much: in the
 * words in which the engine says so of its own arrays, by which all lack of memory is known.
 */
class NoRoom extends RangeError {
  constructor(what: string) {
    super(`Memory allocation failed: libheif has no room for ${what}.`);
  }
}

/** Some bytes of libheif's memory, for as long as they are used. */
export function borrowed<T>(length: number, use: (at: number) => T): T {
  const at = libheif._malloc(length);
  if (at === 0) throw new NoRoom(`${length} bytes`);
  try {
    return use(at);
  } finally {
    libheif._free(at);
  }
}

/** A call that may fail: its error is a code (0 for none), a finer one and the address of a sentence, four bytes each. */
export function tried(call: (error: number) => void): void {
  borrowed(12, (error) => {
    call(error);
    const code = uint32At(error);
    if (code === NO_MEMORY && uint32At(error + 4) !== OVER_LIMIT) throw new NoRoom('this photo');
    if (code !== 0) throw new Error(`libheif refused the file (error ${code}).`);
  });
}

/** The same for a call that gives a number. */
export function asked(call: (error: number, out: number) => void): number {
  return borrowed(4, (out) => {
    tried((error) => call(error, out));
    return uint32At(out);
  });
}

/** heif_error_Memory_allocation_error; a damaged file that asks for more than libheif allows has it too, and says so. */
const NO_MEMORY = 6;
/** heif_suberror_Security_limit_exceeded. */
const OVER_LIMIT = 1000;
