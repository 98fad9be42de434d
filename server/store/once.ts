/** Bytes that are there already, as a stream of one piece. */
export async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  await Promise.resolve();
  yield bytes;
}
