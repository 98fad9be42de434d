import { askFile } from '../wire/ask.ts';

const fetched = new Map<string, Promise<string>>();

/** A picture as a data address, fetched once for all drawings that show it. */
export function inside(address: string): Promise<string> {
  const known = fetched.get(address);
  if (known) return known;
  const coming = askFile(address).then(dataAddress);
  fetched.set(address, coming);
  // Asked again when it is next wanted.
  coming.catch(() => fetched.delete(address));
  return coming;
}

function dataAddress(file: Blob): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(reader.result as string);
    reader.onerror = () => reject(reader.error ?? new Error(file.type));
    reader.readAsDataURL(file);
  });
}
