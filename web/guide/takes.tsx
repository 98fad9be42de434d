import type { VNode } from 'preact';
import type { PlanGuide } from '../../server/contract/plan-guides.ts';
import { guideWords } from '../words/guide.ts';

/** What the batch takes of cardstock and ink, what of that she has, and whether anything is to buy. */
export function Takes({ takes }: { takes: PlanGuide['takes'] }): VNode {
  return (
    <section class="guide-takes" aria-labelledby="guide-takes">
      <h3 id="guide-takes">{guideWords.takes}</h3>
      <ul>
        {takes.of.map(({ kind, name, hex, said, toBuy }) => (
          <li key={`${kind} ${name} ${hex}`}>
            <span class={`chip ${kind}`} style={{ background: hex }} />
            <span>
              <strong>{name}</strong>: {toBuy ? <strong>{said}</strong> : said}
            </span>
          </li>
        ))}
      </ul>
      <p>
        <strong>{takes.said}</strong>
      </p>
    </section>
  );
}
