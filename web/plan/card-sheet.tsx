import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Pin, PlannedCard, PlannedLayer } from '../../server/contract/plans.ts';
import type { Problem } from '../../server/contract/values.ts';
import { Dialog } from '../table/dialog.tsx';
import { Icon } from '../table/icon.tsx';
import { Mishap, type Instead } from '../table/mishap.tsx';
import { planWords } from '../words/plan.ts';
import { words } from '../words/words.ts';
import { Alternatives } from './alternatives.tsx';
import { CardImage } from './card-image.tsx';
import { LayerLine } from './layer-line.tsx';
import { layoutOf } from './layout-of.ts';
import { Reasons } from './reasons.tsx';
import { StepButtons } from './step-buttons.tsx';
import type { StepsAt } from './steps.ts';
import type { OnTable } from './table-of.ts';
import type { Changed } from './use-wishes.ts';

interface Props {
  readonly card: PlannedCard;
  readonly table: OnTable;
  readonly pins: readonly Pin[];
  readonly busy: boolean;
  /** Whether she has waited for a while already. */
  readonly late: boolean;
  readonly problem: Problem | null;
  /** Does what was refused, and takes back what it clashed with; null where none is known. */
  readonly insist: Instead | null;
  /** Other cards that took other papers because of what she wished last. */
  readonly changed: Pick<Changed, 'too' | 'bySheets'> | null;
  readonly pin: (pins: Pin[]) => void;
  readonly show: (card: number | null) => void;
  readonly steps: StepsAt;
}

/** One card close up: its layers, why they go together, and what could lie there instead. */
export function CardSheet(props: Props): VNode {
  const { card, table, busy, late, problem, insist, changed, show } = props;
  const [swapping, setSwapping] = useState<string | null>(null);
  return (
    <Dialog title={titleOf(card, table)} close={() => show(null)} wide>
      <div class={late ? 'card-close busy' : 'card-close'} aria-busy={busy}>
        <div class="card-close-picture">
          <CardImage card={card} table={table} pins={props.pins} nearness="close" />
          <StepButtons {...props.steps} />
          {changed !== null && changed.too.length > 0 && (
            <p class="small changed-here">
              <Icon name="turn" /> {planWords.changed.too(changed.too, changed.bySheets)}
            </p>
          )}
          <Neighbours number={card.number} count={table.plan.cards.length} show={show} />
        </div>
        <div class="card-close-words">
          <p class="score-words">{words.goes(card.score)}</p>
          <p class="lead">{card.why}</p>
          {problem && <Mishap problem={problem} otherwise={insist} />}
          <Layers {...props} swapping={swapping} swap={setSwapping} />
          <Reasons reasons={card.reasons} />
        </div>
      </div>
    </Dialog>
  );
}

function titleOf(card: PlannedCard, table: OnTable): string {
  const name = layoutOf(table, card)?.name;
  return name ? `${planWords.card(card.number)}: ${name}` : planWords.card(card.number);
}

interface LayersProps extends Props {
  readonly swapping: string | null;
  readonly swap: (layer: string | null) => void;
}

function Layers(props: LayersProps): VNode {
  const { card, swapping, swap } = props;
  return (
    <>
      <h3>{planWords.layers}</h3>
      <ul class="layers">
        {[...card.layers].reverse().map((layer: PlannedLayer) => (
          <LayerLine
            key={layer.layer}
            {...props}
            layer={layer}
            open={swapping === layer.layer}
            toggle={() => swap(swapping === layer.layer ? null : layer.layer)}
          >
            {swapping === layer.layer && <Alternatives {...props} layer={layer} />}
          </LayerLine>
        ))}
      </ul>
    </>
  );
}

function Neighbours({
  number,
  count,
  show,
}: {
  number: number;
  count: number;
  show: (card: number) => void;
}): VNode {
  return (
    <div class="steps">
      <button
        type="button"
        class="round"
        disabled={number <= 1}
        aria-label={planWords.cardBefore}
        onClick={() => show(number - 1)}
      >
        <Icon name="back" />
      </button>
      <button
        type="button"
        class="round"
        disabled={number >= count}
        aria-label={planWords.cardAfter}
        onClick={() => show(number + 1)}
      >
        <Icon name="next" />
      </button>
    </div>
  );
}
