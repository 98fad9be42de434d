import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { photosWords } from '../words/photos.ts';
import { isPhone } from '../wire/is-phone.ts';

/** The dialog with its drawing of codes is fetched when it is first wanted. */
type Sheet = typeof import('./phone-sheet.tsx').PhoneSheet;

/** Opens the way for a phone, which then stands beside this device; a phone cannot let in others. */
export function UsePhone({ pad }: { pad: string }): VNode | null {
  const [Open, setOpen] = useState<{ sheet: Sheet } | null>(null);
  if (isPhone()) return null;
  return (
    <>
      <button
        type="button"
        class="button quiet"
        onClick={() => {
          void import('./phone-sheet.tsx').then(({ PhoneSheet }) => {
            setOpen({ sheet: PhoneSheet });
          });
        }}
      >
        <Icon name="phone" /> {photosWords.usePhone}
      </button>
      {Open && <Open.sheet pad={pad} close={() => setOpen(null)} />}
    </>
  );
}
