import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Sheet } from '../../server/contract/pads.ts';
import { Dialog } from '../table/dialog.tsx';
import { Icon } from '../table/icon.tsx';
import { padWords } from '../words/pad.ts';
import { isPhone } from '../wire/is-phone.ts';
import { SheetFacts } from './sheet-facts.tsx';

/** What a sheet is called, to be touched and called otherwise; only to be read on a phone that looks on. */
export function SheetName({ pad, sheet }: { pad: string; sheet: Sheet }): VNode {
  const [open, setOpen] = useState(false);
  if (isPhone()) return <strong>{sheet.label}</strong>;
  return (
    <>
      <button
        type="button"
        class="sheet-name"
        aria-label={padWords.rename(sheet.label)}
        onClick={() => setOpen(true)}
      >
        <strong>{sheet.label}</strong> <Icon name="pencil" />
      </button>
      {open && (
        <Dialog title={sheet.label} close={() => setOpen(false)}>
          <p>{padWords.renameLead}</p>
          <SheetFacts pad={pad} sheet={sheet} />
        </Dialog>
      )}
    </>
  );
}
