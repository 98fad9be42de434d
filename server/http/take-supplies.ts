import type { Lab } from '../colour/lab.ts';
import { listed } from '../guide/said.ts';
import { Refusal } from '../refusals/refusal.ts';
import type { Received } from '../store/files.ts';
import type { SupplyRow } from '../store/rows.ts';
import { namesByColour } from './called-by-colour.ts';
import type { Edges } from './edges.ts';
import { makeOnce } from './once.ts';
import type { KeyedQuestion } from './once.ts';

/** A photo of cardstock squares or ink smears, with their names in reading order, one name for all, or none. */
export interface PhotoOfSuppliesTaken {
  readonly kind: 'cardstock' | 'ink';
  readonly names: readonly string[];
  readonly received: Received;
  readonly question: KeyedQuestion | null;
  /** The demo pad that it comes with. */
  readonly demoPad?: string;
}

export interface TakenSupplies {
  readonly supplies: readonly SupplyRow[];
  readonly notes: readonly string[];
}

/** Reads the colours in a photo and keeps each as a supply; what this gives is safe on the disk. */
export async function takeSupplies(
  edges: Edges,
  taken: PhotoOfSuppliesTaken,
): Promise<TakenSupplies> {
  const { store, desk } = edges;
  const { received, kind, names, question, demoPad } = taken;
  try {
    const reading = await desk.readSupplies({ file: received.path, tap: {} });
    const found = reading.supplies.length;
    if (found === 0) throw nothingFound(kind);
    if (names.length > 1 && names.length !== found) throw otherCount(names, found);
    const picture = await store.files.keepBytes('pictures', reading.picture);
    const hash = await store.files.keep('photos', received);
    const { width, height } = reading;
    const notes = [...reading.notes, ...glossyNote(kind, reading.supplies)];
    const ids = await store.write((records) =>
      makeOnce(records, question, edges.now(), async () => {
        const createdAt = edges.now();
        const photo = edges.newId();
        await records.photos.add({
          id: photo,
          pad: null,
          face: null,
          arrangement: kind,
          hash,
          picture,
          width,
          height,
          white: reading.white,
          notes,
          createdAt,
          revision: 1,
        });
        const named = namesFor(names, reading.supplies);
        const supplies = reading.supplies.map((one, at): SupplyRow => {
          const { corners, lab, uncertainty, glossy } = one;
          const name = named[at]!;
          const id = edges.newId();
          const only = demoPad === undefined ? { demo: false } : { demo: true, pad: demoPad };
          const rest = { sheets: null, ...only, createdAt, revision: 1 };
          return { id, kind, name, lab, uncertainty, glossy, photo, corners, ...rest };
        });
        for (const supply of supplies) await records.supplies.add(supply);
        return supplies.map(({ id }) => id);
      }),
    );
    return { supplies: await suppliesAt(edges, ids), notes };
  } finally {
    await store.files.drop(received);
  }
}

export async function suppliesAt(
  { store }: Edges,
  ids: readonly string[],
): Promise<readonly SupplyRow[]> {
  const rows = await Promise.all(ids.map((id) => store.read.supplies.at(id)));
  return rows.filter((row) => row !== null);
}

/** A name for each: her own, her one name counted on, or the words of its colour, counted where two are called alike. */
function namesFor(names: readonly string[], found: readonly { readonly lab: Lab }[]): string[] {
  if (names.length > 1) return [...names];
  const [name] = names;
  if (name !== undefined)
    return found.map((_, at) => (found.length === 1 ? name : `${name.slice(0, 74)} ${at + 1}`));
  return namesByColour(found.map(({ lab }) => lab));
}

/** 'The light mirrors in smear 2: its colour cannot be told.' */
function glossyNote(
  kind: 'cardstock' | 'ink',
  supplies: readonly { readonly glossy: boolean }[],
): string[] {
  const shining = supplies.flatMap(({ glossy }, at) => (glossy ? [at + 1] : []));
  if (shining.length === 0) return [];
  const [thing, is] = [kind === 'ink' ? 'smear' : 'square', shining.length === 1 ? 'its' : 'their'];
  const named = `${thing}${shining.length === 1 ? '' : 's'} ${listed(shining.map(String))}`;
  return [
    `The light mirrors in ${named}, so ${is} colour cannot be told: let the ink dry, turn the card until nothing shines, and take the photo again.`,
  ];
}

function nothingFound(kind: string): Refusal {
  const thing = kind === 'ink' ? 'a smear of ink' : 'a square of cardstock';
  return new Refusal({
    kind: 'nothing-found',
    field: 'photo',
    received: null,
    message: `Expected ${thing} in the photo but found none`,
    mend: 'Lay them on plain white card, a finger’s width apart, and take the photo from above in even light.',
  });
}

function otherCount(names: readonly string[], found: number): Refusal {
  return new Refusal({
    kind: 'does-not-fit',
    field: 'name',
    received: names,
    message: `Expected as many names as colours: there are ${names.length} names, and ${found} were found in the photo`,
    mend: 'Give no name, one name for all, or one for each from the left, row by row; or take the photo again.',
  });
}
