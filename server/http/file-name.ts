/** What a file name may not hold on one of the usual systems, control letters, and halves of letters. */
const FORBIDDEN = /[\p{Cc}\p{Cs}<>:"/\\|?*]+/gu;

/** Most letters of a name, its ending aside: file systems take 255 bytes, a letter up to 4 of them. */
const LONGEST = 60;

/**
 * The header by which a browser shows a file and knows what to call it when it is kept.
 *
 * Takes       the parts of the name, in any language, and its ending without the dot.
 * Source      RFC 6266, appendix D (a plain name first, for those that do not know the other), and RFC 8187,
 *             section 3.2 (letters of all languages).
 */
export function shownAs(parts: readonly string[], ending: string): string {
  const clean = parts.map((part) => part.replaceAll(FORBIDDEN, ' ').replaceAll(/\s+/g, ' ').trim());
  const [first = '', ...rest] = clean.filter((part) => part !== '');
  // A long first part gives way, so that what tells this file from others of it is there.
  const room = Math.max(
    0,
    LONGEST - rest.reduce((sum, part) => sum + Array.from(part).length + 2, 0),
  );
  const short = Array.from(first).slice(0, room).join('').trim();
  const letters = Array.from([short, ...rest].filter((part) => part !== '').join(', '));
  const name = `${letters.slice(0, LONGEST).join('')}.${ending}`;
  const plain = name
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/[^\u0020-\u007e]/g, '_')
    .replaceAll('%', '_');
  const all = encodeURIComponent(name).replaceAll(
    /['()*!]/g,
    (letter) => `%${letter.charCodeAt(0).toString(16).toUpperCase()}`,
  );
  return `inline; filename="${plain}"; filename*=UTF-8''${all}`;
}
