import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { printPaper, stockChosen } from '../table/settings.ts';
import { guideWords } from '../words/guide.ts';
import { settingsWords } from '../words/settings.ts';
import type { GuideBook } from './steps-of.ts';

/** The printed guide, on the paper in her printer or the other, for as many people as it is cut for. */
export function PrintLinks({ book }: { book: GuideBook }): VNode {
  const { table, set, stack, ruler } = book;
  const other = printPaper.value === 'a4' ? 'letter' : 'a4';
  const people = set === null ? '' : `&people=${set.people}`;
  const address = (paper: string): string =>
    `${table.plan.guide}?paper=${paper}&ruler=${ruler}&stack=${stack}${people}${stockAsked()}`;
  return (
    <div class="print-links">
      <a class="button quiet" href={address(printPaper.value)} target="_blank">
        <Icon name="print" /> {guideWords.print(settingsWords.prints[printPaper.value])}
      </a>
      <a class="print-else" href={address(other)} target="_blank">
        {guideWords.printElse(settingsWords.prints[other])}
      </a>
    </div>
  );
}

/** Left to the paper that is asked for, unless she has said what her cardstock comes in. */
function stockAsked(): string {
  return stockChosen.value === 'as-printed' ? '' : `&stock=${stockChosen.value}`;
}
