/** What the name of a layer is worked out from. Lengths may be in any unit: only their share of the card counts. */
export interface Nameable {
  readonly id: string;
  readonly role: string;
  readonly shape: { readonly kind: string };
  readonly box: Extent & { readonly x: number; readonly y: number };
  /** What she calls it. */
  readonly called?: string | undefined;
}

interface Extent {
  readonly width: number;
  readonly height: number;
}

/** Ids that nobody chose: what a layer is, with or without its place and a number. */
const BY_ITSELF =
  /^(?:mat|(?:(?:top|bottom|left|right|middle)-){0,2}(?:panel|strip|circle|banner|greeting|centre-piece))(?:-\d+)?$/;

/** From this part of the card on a layer spans it; nearer to its middle than this a layer lies in the middle. */
const [SPANS, OFF] = [0.8, 0.1] as const;

/**
 * What the layers of a card are called, by their ids, in words and no two alike: as she called them; else, where
 * the id was chosen, by that; else by what each is, and where several are alike by where it lies: 'left panel',
 * 'top strip'. Names are for showing alone: pins and plans know a layer by its id, which stays.
 *
 * It imports nothing, as the page uses it too.
 */
export function layerNames(layers: readonly Nameable[], card: Extent): Map<string, string> {
  const ids = layers.map(({ id }) => id);
  const named = layers.filter(({ id, called }) => called !== undefined || !BY_ITSELF.test(id));
  const others = layers.filter((layer) => !named.includes(layer));
  const kinds = others.map(kindOf);
  const wished = others.map((layer, at) => {
    const alone = kinds.filter((kind) => kind === kinds[at]).length === 1;
    return alone ? kinds[at]! : `${placeOf(layer, card)}${kinds[at]!}`;
  });
  const names = new Map<string, string>();
  const taken = new Set<string>();
  const give = (id: string, name: string): void => {
    taken.add(name.toLowerCase());
    names.set(id, name);
  };
  for (const { id, called } of named) give(id, free(called ?? nameAmong(ids, id), taken, 2));
  others.forEach(({ id }, at) => {
    const name = wished[at]!;
    const alike = wished.filter((other) => other === name).length > 1;
    give(id, alike ? free(`${name} 1`, taken, 2) : free(name, taken, 1));
  });
  return new Map(ids.map((id) => [id, names.get(id)!]));
}

/** An id as words, with its number only if there are several of the kind: `panel-1` alone is 'panel'. */
export function nameAmong(ids: readonly string[], id: string): string {
  const kind = /^(.+)-1$/.exec(id)?.[1];
  const alone =
    kind !== undefined && !ids.some((other) => other !== id && other.replace(/-\d+$/, '') === kind);
  return inWords(alone ? kind : id);
}

/** `left-flap` is 'left flap'. */
export function inWords(id: string): string {
  return id.replaceAll(/[-_]+/g, ' ');
}

/** The name, or where it is taken the name with the next free number. */
function free(name: string, taken: ReadonlySet<string>, from: number): string {
  if (!taken.has(name.toLowerCase())) return name;
  const stem = name.replace(/ \d+$/, '');
  let number = from;
  while (taken.has(`${stem} ${number}`.toLowerCase())) number += 1;
  return `${stem} ${number}`;
}

function kindOf({ role, shape }: Nameable): string {
  if (role !== 'focal') return role;
  return shape.kind === 'circle' || shape.kind === 'banner' ? shape.kind : 'centre piece';
}

/** 'top left ', 'middle '; '' for a layer that spans the card both ways. */
function placeOf({ box: { x, y, width, height } }: Nameable, card: Extent): string {
  const spans = [width / card.width >= SPANS, height / card.height >= SPANS] as const;
  const place = [
    spans[1] ? '' : sideOf((y + height / 2) / card.height, 'top', 'bottom'),
    spans[0] ? '' : sideOf((x + width / 2) / card.width, 'left', 'right'),
  ].filter((side) => side !== '');
  if (place.length > 0) return `${place.join(' ')} `;
  return spans[0] && spans[1] ? '' : 'middle ';
}

function sideOf(middle: number, near: string, far: string): string {
  if (middle < 0.5 - OFF) return near;
  return middle > 0.5 + OFF ? far : '';
}
