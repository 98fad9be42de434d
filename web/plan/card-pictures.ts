import { signal, type ReadonlySignal, type Signal } from '@preact/signals';
import { askFile } from '../wire/ask.ts';
import { swatchAt } from '../pad/swatch-at.ts';
import { inside } from './inside.ts';

/** How near a card is looked at: among the others, or alone and large. */
export type Nearness = 'table' | 'close';

/** Pixels of a screen for a mm of paper: a card among others is about 25 cm² there, alone four times that. */
const FINENESS: Readonly<Record<Nearness, number>> = { table: 2.4, close: 4.4 };
const AT_HAND = 200;

type Place = Signal<string | null>;
/** By where a drawing is asked for. */
const places = new Map<string, Place>();
/** By what is drawn: equal drawings are one picture, which the browser has painted already. */
const pictures = new Map<string, string>();

/**
 * The picture of a card as an address for an image: the service's own drawing with swatches as fine as this
 * screen shows them. Null until it is here.
 *
 * Takes       the address of the drawing (an SVG) and how near it is looked at.
 */
export function cardPicture(drawing: string, nearness: Nearness): ReadonlySignal<string | null> {
  const key = `${nearness} ${drawing}`;
  const known = places.get(key);
  if (known) return known;
  const place: Place = signal(null);
  places.set(key, place);
  composed(drawing, nearness).then(
    (picture) => {
      place.value = picture;
    },
    () => {
      // The drawing that stands by itself may be had all the same; the next look tries anew.
      place.value = drawing;
      places.delete(key);
    },
  );
  return place;
}

async function composed(drawing: string, nearness: Nearness): Promise<string> {
  const text = await (await askFile(besideOf(drawing))).text();
  const key = `${nearness} ${text}`;
  const known = pictures.get(key);
  if (known !== undefined) return known;
  const svg = await filled(text, FINENESS[nearness]);
  const picture = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  pictures.set(key, picture);
  if (pictures.size > AT_HAND) forgetOldest();
  return picture;
}

/** Fetches a paper as the cards on the table show it; `width` is that of the whole sheet in mm. */
export async function fetchPaper(swatch: string, width: number): Promise<void> {
  await inside(swatchAt(swatch, width * FINENESS.table));
}

function besideOf(drawing: string): string {
  return `${drawing}${drawing.includes('?') ? '&' : '?'}papers=beside`;
}

/** The drawing with its swatches inside. */
async function filled(text: string, pixelsPerMm: number): Promise<string> {
  const images = text.matchAll(/<image [^>]*?width="([\d.]+)"[^>]*?href="(\/api\/[^"]+)"/g);
  const swatches = await Promise.all(
    [...images].map(async ([, width, address]) => ({
      address: address!,
      picture: await inside(swatchAt(address!, Number(width) * pixelsPerMm)),
    })),
  );
  return swatches.reduce(
    (so, { address, picture }) => so.replaceAll(`"${address}"`, `"${picture}"`),
    text,
  );
}

function forgetOldest(): void {
  const [key] = pictures.keys();
  const picture = pictures.get(key!)!;
  pictures.delete(key!);
  for (const [at, place] of places) if (place.peek() === picture) places.delete(at);
  URL.revokeObjectURL(picture);
}
