import type { ClassSet } from '../../server/contract/class-sets.ts';
import type { Code, Key, KeyList, Me, NewCode } from '../../server/contract/keys.ts';
import type { CheckedLayout, LayoutListing, NewLayout } from '../../server/contract/layouts.ts';
import type { LeftoverList, NewLeftovers } from '../../server/contract/leftovers.ts';
import type {
  Companion,
  NewPad,
  Pad,
  PadSummary,
  PhotoAnswer,
  SheetPatch,
  SidePatch,
} from '../../server/contract/pads.ts';
import type { NewPlan, Plan, PlanSummary } from '../../server/contract/plans.ts';
import type {
  LayerChoice,
  OtherPlan,
  SheetCurve,
  Weakest,
} from '../../server/contract/plans-again.ts';
import type { PlanCuts, PlanGuide, Ticks } from '../../server/contract/plan-guides.ts';
import type {
  BestSupplies,
  ColourNames,
  Listed,
  Match,
  NewSupply,
  Supplies,
  Supply,
  SuppliesTie,
  SupplyPatch,
  TouchedSupply,
  Twins,
} from '../../server/contract/supplies.ts';
import type { Corners } from '../../server/contract/values.ts';
import { ask, askWithFile } from './ask.ts';
import { change } from './change.ts';

/** Every call of the page to the service, by what it is for. */
export const service = {
  pads: async (): Promise<PadSummary[]> => list(await ask('GET', '/api/pads'), 'pads'),
  pad: (pad: string): Promise<Pad> => ask('GET', `/api/pads/${pad}`),
  startPad: (pad: NewPad): Promise<Pad> => change('POST', '/api/pads', pad),
  renamePad: (pad: string, name: string): Promise<unknown> =>
    change('PATCH', `/api/pads/${pad}`, { name }),
  removePad: (pad: string): Promise<void> => change('DELETE', `/api/pads/${pad}`),
  bringPad: (file: Blob): Promise<Pad> => askWithFile('/api/pad-files', file, 'application/x-tar'),
  companions: async (pad: string, side: string): Promise<Companion[]> =>
    list(await ask('GET', `/api/pads/${pad}/coordination?side=${side}`), 'companions'),
  moveCorners: (side: string, corners: Corners): Promise<unknown> =>
    change('PATCH', `/api/sides/${side}`, { corners }),
  sayUp: (side: string, up: SidePatch['up']): Promise<unknown> =>
    change('PATCH', `/api/sides/${side}`, { up }),
  showWhite: (photo: string, white: Corners): Promise<unknown> =>
    change('PATCH', `/api/photos/${photo}`, { white }),
  /** One touched place on each scrap, in pixels of the photo. */
  showChips: (photo: string, chips: readonly (readonly [number, number])[]): Promise<PhotoAnswer> =>
    change('PATCH', `/api/photos/${photo}`, { chips }),
  removePhoto: (photo: string): Promise<void> => change('DELETE', `/api/photos/${photo}`),
  changeSheet: (sheet: string, patch: SheetPatch): Promise<unknown> =>
    change('PATCH', `/api/sheets/${sheet}`, patch),
  layouts: async (): Promise<LayoutListing[]> => list(await ask('GET', '/api/layouts'), 'layouts'),
  checkLayout: (layout: NewLayout, signal: AbortSignal | null = null): Promise<CheckedLayout> =>
    change('POST', '/api/layouts/check', layout, signal),
  addLayout: (layout: NewLayout): Promise<LayoutListing> => change('POST', '/api/layouts', layout),
  changeLayout: (id: string, layout: NewLayout): Promise<LayoutListing> =>
    change('PUT', `/api/layouts/${id}`, layout),
  removeLayout: (id: string): Promise<void> => change('DELETE', `/api/layouts/${id}`),
  plan: (plan: string): Promise<Plan> => ask('GET', `/api/plans/${plan}`),
  plans: async (pad: string): Promise<PlanSummary[]> =>
    list(await ask('GET', `/api/plans?pad=${pad}`), 'plans'),
  makePlan: (plan: NewPlan): Promise<Plan> => change('POST', '/api/plans?drawings=changed', plan),
  otherPlans: async (plan: string, count: number, signal: AbortSignal): Promise<OtherPlan[]> =>
    list(await ask('GET', `/api/plans/${plan}/others?count=${count}`, undefined, signal), 'others'),
  withoutSheet: (plan: string, sheet: string, signal: AbortSignal): Promise<OtherPlan> =>
    ask('GET', `/api/plans/${plan}/without/${sheet}`, undefined, signal),
  weakest: (plan: string, signal: AbortSignal): Promise<Weakest> =>
    ask('GET', `/api/plans/${plan}/weakest`, undefined, signal),
  sheetCurve: (plan: string, signal: AbortSignal): Promise<SheetCurve> =>
    ask('GET', `/api/plans/${plan}/curve`, undefined, signal),
  layerChoices: async (plan: string, card: string, layer: string): Promise<LayerChoice[]> =>
    list(await ask('GET', `/api/plans/${plan}/cards/${card}/layers/${layer}/choices`), 'choices'),
  takePlan: (
    plan: string,
    slots: Readonly<Record<string, string>>,
    supplies: 'then' | 'now',
    word?: string,
  ): Promise<Plan> =>
    change('POST', `/api/plans/${plan}/taken?drawings=changed`, { slots, supplies }, null, word),
  cuts: (plan: string, ruler: string, people: string, stack: string): Promise<PlanCuts> =>
    ask('GET', `/api/plans/${plan}/cuts?ruler=${ruler}&people=${people}&stack=${stack}`),
  guide: (plan: string, ruler: string, stock: string): Promise<PlanGuide> =>
    ask('GET', `/api/plans/${plan}/guide?ruler=${ruler}&stock=${stock}`),
  classSet: (plan: string, people: string, stack: string, stock: string): Promise<ClassSet> =>
    ask('GET', `/api/plans/${plan}/class-set?people=${people}&stack=${stack}&stock=${stock}`),
  leftovers: (pad: string, plan: string): Promise<LeftoverList> =>
    ask('GET', `/api/pads/${pad}/leftovers${plan === '' ? '' : `?plan=${plan}`}`),
  keepLeftovers: (pad: string, left: NewLeftovers): Promise<LeftoverList> =>
    change('POST', `/api/pads/${pad}/leftovers`, left),
  removeLeftover: (pad: string, part: string): Promise<void> =>
    change('DELETE', `/api/pads/${pad}/leftovers/${part}`),
  ticks: async (plan: string): Promise<string[]> =>
    list(await ask('GET', `/api/plans/${plan}/ticks`), 'ticks'),
  tick: async (plan: string, step: string, done: boolean): Promise<string[]> =>
    (await change<Ticks>('POST', `/api/plans/${plan}/ticks`, { step, done })).ticks,
  me: (): Promise<Me> => ask('GET', '/api/me'),
  /** Once: a code is good for one key, and a second try would be told that it is used up. */
  bringCode: (code: string): Promise<Key> => ask('POST', '/api/keys', { code }),
  /** Once: every try that arrives makes another code, and one that nobody sees lets somebody in all the same. */
  newCode: (code: NewCode): Promise<Code> => ask('POST', '/api/codes', code),
  keys: async (): Promise<Key[]> => (await ask<KeyList>('GET', '/api/keys')).keys,
  removeKey: (key: string): Promise<void> => change('DELETE', `/api/keys/${key}`),
  supplies: async (): Promise<Supply[]> => list(await ask('GET', '/api/supplies'), 'supplies'),
  supplyPhotos: async (): Promise<NonNullable<Supplies['photos']>> =>
    list(await ask('GET', '/api/supplies'), 'photos'),
  colourNames: (): Promise<ColourNames> => ask('GET', '/api/colour-names'),
  addSupply: (supply: NewSupply): Promise<Supplies> => change('POST', '/api/supplies', supply),
  photographSupplies: (form: FormData): Promise<Supplies> => change('POST', '/api/supplies', form),
  touchSupply: (photo: string, supply: TouchedSupply): Promise<Supplies> =>
    change('POST', `/api/photos/${photo}/supplies`, supply),
  tieSupplies: (photo: string, tie: SuppliesTie): Promise<Supplies> =>
    change('PATCH', `/api/photos/${photo}/supplies`, tie),
  changeSupply: (supply: string, patch: SupplyPatch): Promise<unknown> =>
    change('PATCH', `/api/supplies/${supply}`, patch),
  bringSupplies: (csv: string): Promise<Listed> =>
    askWithFile('/api/supplies.csv', csv, 'text/csv'),
  twins: async (): Promise<Twins['twins']> =>
    list(await ask('GET', '/api/supplies/twins'), 'twins'),
  bestOfSide: (side: string, colour?: string): Promise<BestSupplies> =>
    ask('GET', `/api/sides/${side}/supplies${colour === undefined ? '' : `?colour=${colour}`}`),
  bestOfPlan: (plan: string, stock: string): Promise<BestSupplies> =>
    ask('GET', `/api/plans/${plan}/supplies?stock=${stock}`),
  removeSupply: (supply: string): Promise<void> => change('DELETE', `/api/supplies/${supply}`),
  matches: async (supplies: readonly string[], side: string, colour?: number): Promise<Match[]> =>
    list(await ask('POST', '/api/matches', { supplies, sides: [side], colour }), 'matches'),
};

/** A list that comes bare or under its name. */
function list<T>(answer: unknown, name: string): T[] {
  if (Array.isArray(answer)) return answer as T[];
  return (answer as Record<string, T[]>)[name] ?? [];
}
