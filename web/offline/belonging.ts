/** Whose a kept answer is: a pad's, and of one of its plans; of all, such as the list of pads; or of nothing that is here any more. */
export type Owner = { readonly pad: string; readonly plan: string | null } | 'all' | 'nothing';

/** Which pad a plan, a side, a photo or a sheet is of, by its id; null for what is of no pad, such as a photo of supplies. */
export type Owners = ReadonlyMap<string, string | null>;

/** Nouns of the service's addresses whose things belong to a pad, though their address does not name it. */
const OF_A_PAD = ['plans', 'sides', 'photos', 'sheets', 'uploads'];

/** Whose the answer at an address is, given as path and query. */
export function ownerOf(address: string, owners: Owners): Owner {
  const { path, query } = parts(address);
  const [api, noun, id, what] = path;
  if (api !== 'api') return 'all';
  if (noun === 'pads') return id === undefined ? 'all' : { pad: id, plan: null };
  const listed = query.get('pad');
  if (noun === 'plans' && id === undefined && listed !== null) return { pad: listed, plan: null };
  // A few words, and her own work: never in the way.
  if (noun === 'plans' && what === 'ticks') return 'all';
  if (id === undefined || !OF_A_PAD.includes(noun!)) return 'all';
  const pad = owners.get(id);
  if (pad === undefined) return 'nothing';
  return pad === null ? 'all' : { pad, plan: noun === 'plans' ? id : null };
}

/** The id that an address names without naming its pad; null where it names none. */
export function idIn(address: string): string | null {
  const [api, noun, id] = parts(address).path;
  return api === 'api' && OF_A_PAD.includes(noun!) ? (id ?? null) : null;
}

/** The pad whose own answer stands at an address: the pad itself, or the list of its plans. */
export function padTold(address: string): string | null {
  const { path, query } = parts(address);
  const [api, noun, id, more] = path;
  if (api !== 'api' || more !== undefined) return null;
  if (noun === 'pads') return id ?? null;
  return noun === 'plans' && id === undefined ? query.get('pad') : null;
}

/** Which of the wanted ids an answer speaks of. */
export function idsIn(text: string, wanted: ReadonlySet<string>): string[] {
  const spoken = new Set([...text.matchAll(/"([\w-]{1,64})"/g)].map(([, id]) => id!));
  return [...spoken].filter((id) => wanted.has(id));
}

function parts(address: string): { path: string[]; query: URLSearchParams } {
  const { pathname, searchParams } = new URL(address, 'http://here');
  return { path: pathname.split('/').filter(Boolean), query: searchParams };
}
