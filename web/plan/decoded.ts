import { askFile } from '../wire/ask.ts';
import { oldestUnshown } from './oldest-unshown.ts';

/** Kept, because a browser forgets a decoded picture that nothing shows; the one used longest ago comes first. */
const fetched = new Map<string, Promise<HTMLImageElement>>();
/** Those that are here. */
const here = new Map<string, string>();

/** Both faces of a pad of 40 sheets, on the table and close up. */
const MOST_KEPT = 160;

/** A picture's address within this page: fetched and decoded once for all drawings that show it. */
export async function decoded(address: string): Promise<string> {
  const known = fetched.get(address);
  if (known) {
    fetched.delete(address);
    fetched.set(address, known);
    return (await known).src;
  }
  const coming = askFile(address).then(decode);
  fetched.set(address, coming);
  // Asked again when it is next wanted.
  coming.catch(() => fetched.delete(address));
  const { src } = await coming;
  here.set(address, src);
  return src;
}

/** Forgets what was used longest ago and no drawing shows; gives the addresses within the page that are no more. */
export function forgetPapers(shown: (picture: string) => boolean): string[] {
  const kept = [...fetched.keys()].filter((address) => here.has(address));
  return oldestUnshown(kept, MOST_KEPT, (address) => shown(here.get(address)!)).map((address) => {
    const picture = here.get(address)!;
    fetched.delete(address);
    here.delete(address);
    URL.revokeObjectURL(picture);
    return picture;
  });
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
