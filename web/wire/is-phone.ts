import { me } from './shelves.ts';

/** Whether this device came in by the key of a phone, which is for looking at one pad and for adding photos to it. */
export function isPhone(): boolean {
  return (me.at('all').value.value?.pad ?? null) !== null;
}
