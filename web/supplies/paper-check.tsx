import { signal } from '@preact/signals';
import type { VNode } from 'preact';
import type { Supply } from '../../server/contract/supplies.ts';
import type { Faced } from '../pad/sides.ts';
import { ChoiceRow } from '../table/choice-row.tsx';
import { Once } from '../table/waiting.tsx';
import { matchWords } from '../words/match.ts';
import { padWords } from '../words/pad.ts';
import { bestOfSide } from '../wire/shelves.ts';
import { BestBoard } from './best-board.tsx';
import { GreetingBoard } from './greeting-board.tsx';
import { MatchBoard } from './match-board.tsx';

const looks = ['match', 'greeting', 'best'] as const;
const look = signal<(typeof looks)[number]>('match');

/** What is asked of one paper, one question at a time: does it match, how does a greeting look, what goes best. */
export function PaperCheck({
  faced,
  supplies,
}: {
  faced: Faced;
  supplies: readonly Supply[];
}): VNode {
  const key = `${faced.side.id}/${supplies.map(({ id, revision }) => `${id}.${revision}`).join()}`;
  const side = padWords.sideName(faced.sheet.label, faced.face);
  return (
    <div class="paper-check">
      <h3>{matchWords.against(side)}</h3>
      <ChoiceRow
        legend={matchWords.look}
        name="look"
        of={look}
        choices={looks}
        words={matchWords.looks}
      />
      {look.value === 'match' ? (
        <MatchBoard key={faced.side.id} faced={faced} supplies={supplies} />
      ) : (
        <Once of={bestOfSide.at(key)} again={() => void bestOfSide.fresh(key)}>
          {(best) =>
            look.value === 'greeting' ? (
              <GreetingBoard best={best} faced={faced} supplies={supplies} />
            ) : (
              <BestBoard best={best} inches={false} />
            )
          }
        </Once>
      )}
    </div>
  );
}
