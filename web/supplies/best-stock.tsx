import type { VNode } from 'preact';
import type { BestSupplies } from '../../server/contract/supplies.ts';
import { matchWords } from '../words/match.ts';
import { Why } from './why.tsx';

type Stock = BestSupplies['cardstock'][number];

/** So many are shown: one for each colour of most papers. */
const MOST_SHOWN = 6;

interface Props {
  readonly best: BestSupplies;
  /** Whether it was asked of one colour of the paper, not of all. */
  readonly ofSpot: boolean;
}

/** The best of her cardstock for mats and bases on a paper: each as the match tells it. */
export function BestStock({ best, ofSpot }: Props): VNode {
  const say = matchWords.best;
  const stock = best.cardstock.filter(({ use }) => use !== 'odd').slice(0, MOST_SHOWN);
  return (
    <>
      <h3>{say.cardstock}</h3>
      {stock.length === 0 && (
        <p>
          {best.cardstock.length === 0
            ? say.noneOfAll.cardstock
            : ofSpot
              ? say.noneForSpot.cardstock
              : say.noCardstock}
        </p>
      )}
      <ul class="best-list shopping">
        {stock.map((one) => (
          <li key={one.supply}>
            <span class="chip big" style={{ background: one.colour.hex }} />
            <div>
              <strong>{one.name}</strong>: {headline(one)}
              {one.alike.length > 0 && (
                <span class="small">{say.alike(one.alike.map(({ name }) => name))}</span>
              )}
              <Why of={one.name} text={one.why} measured={one.use === 'quiet' ? null : one} />
            </div>
          </li>
        ))}
      </ul>
    </>
  );
}

function headline({ use, verdict, nearest }: Stock): string {
  const say = matchWords.best;
  return use === 'quiet' ? say.quiet : say.beside[verdict](nearest.name);
}
