/** What she measures with: inches or millimetres. */
export type Ruler = 'in' | 'mm';

const MM: Record<string, number> = {
  in: 25.4,
  inch: 25.4,
  inches: 25.4,
  '"': 25.4,
  '″': 25.4,
  mm: 1,
  cm: 10,
};
const VULGAR: Record<string, string> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};
const FORM = /^(?:(\d+(?:[.,]\d+)?)(?=[\s\-a-z"″]|$))?(?:[\s-]*(\d+)\/(\d+))?\s*([a-z"″]+)?$/;

/** Millimetres of a length as a person writes it (`4 1/4 in`, `5¾"`, `14,6 cm`), or null. */
export function millimetres(text: string, otherwise: Ruler = 'in'): number | null {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/[¼½¾⅛⅜⅝⅞]/g, (sign) => ` ${VULGAR[sign]!}`)
    .trim();
  const parts = FORM.exec(plain);
  const [, whole, above, below, unit = otherwise] = parts ?? [];
  if (!parts || (whole === undefined && above === undefined) || below === '0') return null;
  const scale = MM[unit];
  if (scale === undefined) return null;
  const fraction = above === undefined ? 0 : Number(above) / Number(below);
  return (Number((whole ?? '0').replace(',', '.')) + fraction) * scale;
}

/** Millimetres as she reads them off her ruler: the nearest 1/16 in, or whole millimetres. */
export function written(mm: number, ruler: Ruler): string {
  if (ruler === 'mm') return `${Math.round(mm)} mm`;
  return `${sixteenths(Math.round((mm / 25.4) * 16))} in`;
}

function sixteenths(count: number): string {
  const whole = Math.floor(count / 16);
  let above = count % 16;
  let below = 16;
  while (above > 0 && above % 2 === 0) [above, below] = [above / 2, below / 2];
  if (above === 0) return String(whole);
  return whole === 0 ? `${above}/${below}` : `${whole} ${above}/${below}`;
}

/** A length of the service in the unit she chose; what cannot be read stands as it came. */
export function lengthFor(text: string, ruler: Ruler): string {
  const mm = millimetres(text);
  return mm === null ? text : written(mm, ruler);
}

/** `6 x 6 in`: two lengths with the unit said once. */
export function sizeFor(size: { width: string; height: string }, ruler: Ruler): string {
  return together(lengthFor(size.width, ruler), lengthFor(size.height, ruler));
}

/** The size of a piece as the service writes it, `4 in x 5 1/4 in`, in the unit she chose. */
export function pieceFor(text: string, ruler: Ruler): string {
  const [width, height] = text.split(/\s+x\s+|\s*×\s*/);
  if (width === undefined || height === undefined) return text;
  return together(lengthFor(width, ruler), lengthFor(height, ruler));
}

function together(width: string, height: string): string {
  const unit = /\s(in|mm)$/.exec(width);
  const once = unit && height.endsWith(unit[0]) ? width.slice(0, -unit[0].length) : width;
  return `${once} × ${height}`;
}
