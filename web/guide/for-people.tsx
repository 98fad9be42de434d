import type { VNode } from 'preact';
import { guideWords } from '../words/guide.ts';
import { MOST_PEOPLE, MOST_STACKED, peopleFor, setPeople, stacked } from './how-cut.ts';
import { Stepper } from './stepper.tsx';
import type { GuideBook } from './steps-of.ts';

/** The same batch for several people, each with the whole of it; and how many sheets are cut at once. */
export function ForPeople({ book }: { book: GuideBook }): VNode {
  const { plan } = book.table;
  const { set } = book;
  return (
    <>
      <div class="steppers">
        <Stepper
          label={guideWords.people}
          value={peopleFor(plan.id)}
          least={1}
          most={MOST_PEOPLE}
          set={(count) => setPeople(plan.id, count)}
        />
        <Stepper
          label={guideWords.stacked}
          value={stacked.value}
          least={1}
          most={MOST_STACKED}
          set={(count) => {
            stacked.value = count;
          }}
        />
      </div>
      <p class="small">{guideWords.stackedHow}</p>
      {set && (
        <>
          <ul class="said">
            {set.said.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <h3>{guideWords.sheetsToHave}</h3>
          <ul class="sheets-to-have">
            {set.ofSheets.map(({ sheet, label, needed, inPad }) => (
              <li key={sheet}>
                <strong>{guideWords.ofSheet(label, needed)}</strong>{' '}
                <span class="small">{guideWords.inPad(inPad, needed)}</span>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
