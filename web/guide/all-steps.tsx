import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { guideWords } from '../words/guide.ts';
import type { Step } from './step.ts';
import { isTicked } from './ticked.ts';

interface Props {
  readonly plan: string;
  readonly steps: readonly Step[];
  readonly at: number;
  readonly go: (index: number) => void;
}

/** Every step in the order of the work, by its chapter; a touch goes to it. */
export function AllSteps({ plan, steps, at, go }: Props): VNode {
  const kinds = [...new Set(steps.map(({ kind }) => kind))];
  return (
    <section aria-labelledby="all-steps">
      <h2 id="all-steps">{guideWords.all}</h2>
      {kinds.map((kind) => (
        <div key={kind} class="chapter">
          <h3>{guideWords.chapters[kind]}</h3>
          <ol class="all-steps">
            {steps.map((one, index) =>
              one.kind === kind ? (
                <li key={one.id}>
                  <button
                    type="button"
                    aria-current={index === at ? 'step' : undefined}
                    onClick={() => {
                      go(index);
                      scrollTo(0, 0);
                    }}
                  >
                    {isTicked(plan, one.id) ? <Icon name="tick" /> : <span class="box" />}
                    <span>
                      {one.title}
                      {one.aside !== undefined && <span class="small aside">{one.aside}</span>}
                    </span>
                    {isTicked(plan, one.id) && <span class="unseen">{guideWords.isDone}</span>}
                  </button>
                </li>
              ) : null,
            )}
          </ol>
        </div>
      ))}
    </section>
  );
}
