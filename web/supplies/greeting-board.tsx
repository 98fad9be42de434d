import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { BestSupplies, StampedInk, Supply } from '../../server/contract/supplies.ts';
import type { Faced } from '../pad/sides.ts';
import { Icon, type IconName } from '../table/icon.tsx';
import { matchWords } from '../words/match.ts';
import { stripsOf, type Strip } from './strips.ts';

const marks: Record<StampedInk['reads'], IconName> = {
  'small letters': 'tick',
  'large letters only': 'near',
  'cannot be read': 'close',
};

interface Props {
  readonly best: BestSupplies;
  readonly faced: Faced;
  readonly supplies: readonly Supply[];
}

/** How each ink would look on a strip, and whether a greeting can be read there. */
export function GreetingBoard({ best, faced, supplies }: Props): VNode {
  const say = matchWords.greeting;
  const [at, setAt] = useState(0);
  const strips = stripsOf(best, faced.side, supplies);
  const shown = strips[at] ?? strips[0];
  if (shown === undefined || shown.inks.length === 0) return <p>{say.none}</p>;
  return (
    <div class="greeting-board">
      <ul class="strip-row" aria-label={say.strips}>
        {strips.map((strip, index) => (
          <li key={strip.key}>
            <button
              type="button"
              class="strip-button"
              aria-pressed={strip === shown}
              onClick={() => setAt(index)}
            >
              <span class="chip" style={{ background: strip.hex }} /> {strip.name}
            </button>
          </li>
        ))}
      </ul>
      <ul class="stamped">
        {shown.inks.map((ink) => (
          <StampedLine key={ink.ink} stamped={ink} strip={shown} />
        ))}
      </ul>
      <p class="caution">
        <Icon name="caution" /> {best.range}
      </p>
    </div>
  );
}

function StampedLine({ stamped, strip }: { stamped: StampedInk; strip: Strip }): VNode {
  const say = matchWords.greeting;
  return (
    <li class="stamped-line">
      <svg
        class="stamped-strip"
        viewBox="0 0 220 72"
        role="img"
        aria-label={say.picture(stamped.name, strip.name)}
      >
        <rect width="220" height="72" fill={strip.hex} />
        <text x="110" y="36" text-anchor="middle" font-size="27" fill={stamped.printed.hex}>
          {say.large}
        </text>
        <text x="110" y="59" text-anchor="middle" font-size="13" fill={stamped.printed.hex}>
          {say.small}
        </text>
      </svg>
      <div>
        <strong>{stamped.name}</strong>
        <span class={`verdict-word ${stamped.reads === 'cannot be read' ? 'no' : ''}`}>
          <Icon name={marks[stamped.reads]} /> {say.reads[stamped.reads]}
        </span>
        <span class="small">{stamped.reason}</span>
        {stamped.picksUp !== null && stamped.reads !== 'cannot be read' && (
          <span class="small">{say.picksUp(stamped.picksUp)}</span>
        )}
        <details class="small figures">
          <summary>{matchWords.figures}</summary>
          <p>{say.figures(stamped.contrast, Math.abs(stamped.lighter), stamped.uncertainty)}</p>
        </details>
      </div>
    </li>
  );
}
