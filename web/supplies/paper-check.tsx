import { useSignal } from '@preact/signals';
import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Supply } from '../../server/contract/supplies.ts';
import type { Faced } from '../pad/sides.ts';
import { ChoiceRow } from '../table/choice-row.tsx';
import { Once } from '../table/waiting.tsx';
import { matchWords } from '../words/match.ts';
import { padWords } from '../words/pad.ts';
import { bestOfSide } from '../wire/shelves.ts';
import { BesidePaper, WHOLE_PAPER, type Picked } from './beside-paper.tsx';
import { BestBoard } from './best-board.tsx';
import { GreetingBoard } from './greeting-board.tsx';
import { MatchBoard } from './match-board.tsx';

const looks = ['match', 'greeting', 'best'] as const;

/**
 * What is asked of one paper, one question at a time: does it match, how does a greeting look, what goes best. Each paper
 * begins with the first, for which she touches it.
 */
export function PaperCheck({
  faced,
  supplies,
}: {
  faced: Faced;
  supplies: readonly Supply[];
}): VNode {
  const look = useSignal<(typeof looks)[number]>('match');
  const [picked, pick] = useState<Picked>(WHOLE_PAPER);
  const key = `${faced.side.id}/${supplies.map(({ id, revision }) => `${id}.${revision}`).join()}`;
  const ofSpot = picked.colour !== null;
  const asked = ofSpot ? `${key}/${picked.colour}` : key;
  const about = faced.side.id;
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
        <MatchBoard faced={faced} supplies={supplies} picked={picked} pick={pick} />
      ) : look.value === 'greeting' ? (
        <Once of={bestOfSide.at(key)} again={() => void bestOfSide.fresh(key)} about={about}>
          {(best) => <GreetingBoard best={best} faced={faced} supplies={supplies} />}
        </Once>
      ) : (
        <BesidePaper faced={faced} how={matchWords.tapForBest} picked={picked} pick={pick}>
          <Once
            of={bestOfSide.at(asked)}
            again={() => void bestOfSide.fresh(asked)}
            about={`${about}/${picked.colour}`}
          >
            {(best) => (
              <BestBoard
                best={best}
                inches={false}
                hasInk={supplies.some(({ kind }) => kind === 'ink')}
                ofSpot={ofSpot}
              />
            )}
          </Once>
        </BesidePaper>
      )}
    </div>
  );
}
