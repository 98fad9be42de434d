/** Whatever their capitals words are the same, and then with spaces, dashes or nothing between them too (ECMA-402). */
const WORDS = new Intl.Collator('en', { sensitivity: 'base' });
const LETTERS = new Intl.Collator('en', { sensitivity: 'base', ignorePunctuation: true });

/** The one of some names that words stand for, in any spelling of them; the service reads them alike. */
export function saidIn<Named extends { readonly name: string }>(
  names: readonly Named[],
  text: string,
): Named | undefined {
  const said = text.trim().replaceAll(/grey/gi, 'gray');
  return (
    names.find(({ name }) => WORDS.compare(name, said) === 0) ??
    names.find(({ name }) => LETTERS.compare(name, said) === 0)
  );
}
