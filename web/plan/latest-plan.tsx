import { useEffect } from 'preact/hooks';
import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { Link } from '../table/link.tsx';
import { Once } from '../table/waiting.tsx';
import { settle } from '../table/way.ts';
import { planWords } from '../words/plan.ts';
import { words } from '../words/words.ts';
import { plansOf } from '../wire/shelves.ts';
import { planNow, planOf } from './made.ts';

type At = 'plan' | 'guide';

/** Goes on to the plan last made: the one that this device remembers, else the latest of the service. */
export function LatestPlan({ pad, at }: { pad: string; at: At }): VNode {
  const mine = planOf(pad);
  if (mine !== null) return <GoOn pad={pad} at={at} plan={mine} />;
  return (
    <div class="screen">
      <Once of={plansOf.at(pad)} again={() => void plansOf.fresh(pad)} heading={words.stations[at]}>
        {(made) => {
          const latest = planNow(pad, made);
          if (latest === null) return <NoPlan pad={pad} />;
          return <GoOn pad={pad} at={at} plan={latest} />;
        }}
      </Once>
    </div>
  );
}

function GoOn({ pad, at, plan }: { pad: string; at: At; plan: string }): null {
  useEffect(() => {
    settle({ at, pad, plan });
  }, [pad, at, plan]);
  return null;
}

function NoPlan({ pad }: { pad: string }): VNode {
  return (
    <div class="empty">
      <h1>{planWords.noneTitle}</h1>
      <p class="lead">{planWords.none}</p>
      <Link to={{ at: 'cards', pad, plan: null }} class="button">
        {planWords.toCards} <Icon name="next" />
      </Link>
    </div>
  );
}
