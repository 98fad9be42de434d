export const HOUSE: Readonly<Record<string, readonly string[] | '*'>>;
export const PURE: readonly string[];
export const DOORS: Readonly<Record<string, readonly string[]>>;
export function importFault(file: string, specifier: string): string | null;
