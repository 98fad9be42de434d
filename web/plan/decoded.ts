import { askFile } from '../wire/ask.ts';

/** Kept, because a browser forgets a decoded picture that nothing shows. */
const fetched = new Map<string, Promise<HTMLImageElement>>();

/** A picture's address within this page: fetched and decoded once for all drawings that show it. */
export async function decoded(address: string): Promise<string> {
  const known = fetched.get(address);
  if (known) return (await known).src;
  const coming = askFile(address).then(decode);
  fetched.set(address, coming);
  // Asked again when it is next wanted.
  coming.catch(() => fetched.delete(address));
  return (await coming).src;
}

async function decode(file: Blob): Promise<HTMLImageElement> {
  const picture = new Image();
  picture.src = URL.createObjectURL(file);
  try {
    await picture.decode();
  } catch (fault) {
    URL.revokeObjectURL(picture.src);
    throw fault;
  }
  return picture;
}
