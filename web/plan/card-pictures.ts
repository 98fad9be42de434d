import { signal, type ReadonlySignal, type Signal } from '@preact/signals';
import type { PlannedCard } from '../../server/contract/plans.ts';
import { askFile } from '../wire/ask.ts';
import { layBy } from '../offline/lay-by.ts';
import { swatchAt } from '../pad/swatch-at.ts';
import { whenIdle } from '../table/when-idle.ts';
import { decoded, forgetPapers } from './decoded.ts';
import { showTogether } from './together.ts';

/** How near a card is looked at: among the others, or alone and large. */
export type Nearness = 'table' | 'close';

/** Pixels of a screen for a mm of paper: a card among others is about 25 cm² there, alone four times that. */
const FINENESS: Readonly<Record<Nearness, number>> = { table: 2.4, close: 4.4 };
const AT_HAND = 200;

/** Drawings that came along with their plan, by where they would be asked for. */
const brought = new Map<string, string>();

/** A card's drawing as text whose papers the page has decoded; or where a drawing may be had that stands by itself. */
export type CardPicture =
  | { readonly svg: string; readonly address?: undefined }
  | { readonly svg?: undefined; readonly address: string };

type Place = Signal<CardPicture | null>;
/** By where a drawing is asked for. */
const places = new Map<string, Place>();
/** By what is drawn: equal drawings are one picture, which stays on the page as it is. */
const pictures = new Map<string, CardPicture>();

/**
 * The picture of a card: the service's own drawing with swatches as fine as this screen shows them. Null until
 * it is here.
 *
 * Takes       the address of the drawing (an SVG) and how near it is looked at.
 */
export function cardPicture(
  drawing: string,
  nearness: Nearness,
): ReadonlySignal<CardPicture | null> {
  const key = `${nearness} ${drawing}`;
  const known = places.get(key);
  if (known) return known;
  const place: Place = signal(null);
  places.set(key, place);
  const coming = composed(drawing, nearness).then(
    (picture) => () => {
      place.value = picture;
    },
    () => () => {
      // The drawing that stands by itself may be had all the same; the next look tries anew.
      place.value = { address: drawing };
      places.delete(key);
    },
  );
  showTogether(`${nearness} ${planOf(drawing)}`, coming);
  void coming.then(() => whenIdle(forgetUnshown));
  return place;
}

/** Takes a drawing that came along with its plan, so that it need not be asked for. */
export function bringDrawing(drawing: string, text: string): void {
  const address = besideOf(drawing);
  brought.set(address, text);
  if (brought.size > AT_HAND) brought.delete([...brought.keys()][0]!);
  whenIdle(() => void layBy(address, text, 'image/svg+xml'));
}

async function composed(drawing: string, nearness: Nearness): Promise<CardPicture> {
  const address = besideOf(drawing);
  const text = brought.get(address) ?? (await (await askFile(address)).text());
  const key = `${nearness} ${text}`;
  const known = pictures.get(key);
  if (known !== undefined) return known;
  const picture = { svg: await filled(text, FINENESS[nearness]) };
  pictures.set(key, picture);
  if (pictures.size > AT_HAND) forgetOldest();
  return picture;
}

/** Fetches a paper as the cards on the table show it; `width` is that of the whole sheet in mm. */
export async function fetchPaper(swatch: string, width: number): Promise<void> {
  await decoded(swatchAt(swatch, width * FINENESS.table));
}

/** The drawing that the browser itself paints, sharp at every size. */
export function drawnAt({ picture }: Pick<PlannedCard, 'picture'>): string {
  return picture.replace(/\.png$/, '.svg');
}

/** The address of a drawing without its card: the same for all cards of a plan. */
function planOf(drawing: string): string {
  return drawing.replace(/\/card-\d+\./, '/');
}

function besideOf(drawing: string): string {
  return `${drawing}${drawing.includes('?') ? '&' : '?'}papers=beside`;
}

/** The drawing with the addresses of swatches that are decoded. */
async function filled(text: string, pixelsPerMm: number): Promise<string> {
  const images = text.matchAll(/<image [^>]*?width="([\d.]+)"[^>]*?href="(\/api\/[^"]+)"/g);
  const swatches = await Promise.all(
    [...images].map(async ([, width, address]) => ({
      address: address!,
      picture: await decoded(swatchAt(address!, Number(width) * pixelsPerMm)),
    })),
  );
  return swatches.reduce(
    (so, { address, picture }) => so.replaceAll(`"${address}"`, `"${picture}"`),
    text,
  );
}

/** Forgets papers that nothing shows, and the drawings made with them; not while a drawing is still to be shown. */
function forgetUnshown(): void {
  if ([...places.values()].some((place) => place.peek() === null)) return;
  const images = document.querySelectorAll('.drawn-card image');
  const shown = new Set([...images].map((image) => image.getAttribute('href')));
  for (const gone of forgetPapers((picture) => shown.has(picture)))
    for (const [key, { svg }] of pictures) if (svg?.includes(`"${gone}"`)) forget(key);
}

function forgetOldest(): void {
  const [key] = pictures.keys();
  forget(key!);
}

function forget(key: string): void {
  const picture = pictures.get(key)!;
  pictures.delete(key);
  for (const [at, place] of places) if (place.peek() === picture) places.delete(at);
}
