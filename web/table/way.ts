import { signal } from '@preact/signals';

/** The stations of her table, in the order of the work. */
export const stations = ['photos', 'pad', 'cards', 'plan', 'guide'] as const;
export type Station = (typeof stations)[number];

/** Where she is: the list of pads, a station of one pad, or the supplies. */
export type Place =
  | { readonly at: 'pads' }
  | { readonly at: 'supplies'; readonly pad: string | null }
  | { readonly at: Station; readonly pad: string; readonly plan: string | null };

/** The address bar is the only memory of the place, so that a reload stays where she was. */
export const place = signal<Place>(read(location.pathname));

addEventListener('popstate', () => {
  place.value = read(location.pathname);
});

export function read(path: string): Place {
  const [first, pad, second, plan] = path.split('/').filter(Boolean).map(decodeURIComponent);
  if (first === 'supplies') return { at: 'supplies', pad: null };
  if (first !== 'pads' || pad === undefined) return { at: 'pads' };
  if (second === 'supplies') return { at: 'supplies', pad };
  const station = stations.find((name) => name === second) ?? 'pad';
  return { at: station, pad, plan: plan ?? null };
}

export function address(to: Place): string {
  if (to.at === 'pads') return '/';
  if (to.at === 'supplies') return to.pad === null ? '/supplies' : `/pads/${to.pad}/supplies`;
  const plan = to.plan === null ? '' : `/${to.plan}`;
  return `/pads/${to.pad}/${to.at}${plan}`;
}

export function go(to: Place): void {
  if (address(to) !== location.pathname) history.pushState(null, '', address(to));
  place.value = to;
  scrollTo(0, 0);
}

/** Changes the address without a step in the history, for a place that only grew more exact. */
export function settle(to: Place): void {
  history.replaceState(null, '', address(to));
  place.value = to;
}
