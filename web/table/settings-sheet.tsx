import type { VNode } from 'preact';
import { settingsWords } from '../words/settings.ts';
import { ChoiceRow } from './choice-row.tsx';
import { Dialog } from './dialog.tsx';
import {
  look,
  looks,
  printPaper,
  printPapers,
  ruler,
  rulers,
  stockChoices,
  stockChosen,
} from './settings.ts';

/** How the table is set: its light, her ruler, the paper in her printer, the sheets of her cardstock. */
export function SettingsSheet({ close }: { close: () => void }): VNode {
  const say = settingsWords;
  return (
    <Dialog title={say.title} close={close}>
      <ChoiceRow legend={say.look} name="look" of={look} choices={looks} words={say.looks} />
      <ChoiceRow legend={say.ruler} name="ruler" of={ruler} choices={rulers} words={say.rulers} />
      <ChoiceRow
        legend={say.print}
        name="print"
        of={printPaper}
        choices={printPapers}
        words={say.prints}
      />
      <ChoiceRow
        legend={say.stock}
        name="stock"
        of={stockChosen}
        choices={stockChoices}
        words={say.stocks}
      />
      <p class="small">{say.kept}</p>
    </Dialog>
  );
}
