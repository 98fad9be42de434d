type Room = Uint8Array | Int32Array | Float32Array | Float64Array;

/**
 * An array to work in, which each call hands out again: to make and clear a new one for every sheet takes longer than
 * much of what is done in it.
 *
 * Takes       how an array of a length is made.
 * Gives       an array of the length asked for. It holds whatever the last one left in it, and is the caller's until
 *             it asks again; never give it away.
 */
export function workRoom<T extends Room>(make: (length: number) => T): (length: number) => T {
  let room = make(0);
  return (length) => {
    if (room.length < length) room = make(length);
    return (room.length === length ? room : room.subarray(0, length)) as T;
  };
}
