import type { NewLayout } from '../../server/contract/layouts.ts';

/** Gives her the layout as a file of her own. */
export function saveToFile(layout: NewLayout): void {
  const text = JSON.stringify(layout, null, 2);
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  link.download = `${layout.name.replace(/[^\p{L}\p{N}]+/gu, '-')}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** The layout of a file, not yet looked at by the service; null where the file is no JSON. */
export async function readFromFile(file: File): Promise<NewLayout | null> {
  try {
    return JSON.parse(await file.text()) as NewLayout;
  } catch {
    return null;
  }
}
