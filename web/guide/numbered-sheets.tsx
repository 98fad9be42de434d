import type { VNode } from 'preact';
import type { Side } from '../../server/contract/pads.ts';
import { swatchAt } from '../pad/swatch-at.ts';
import { guideWords } from '../words/guide.ts';
import { padWords } from '../words/pad.ts';
import type { NumberedSheet } from './number-step.ts';

/** Every sheet with both its sides and the number to put on it. */
export function NumberedSheets({ sheets }: { sheets: readonly NumberedSheet[] }): VNode {
  return (
    <ul class="numbered-sheets">
      {sheets.map(({ sheet, count }) => (
        <li key={sheet.id}>
          <p>
            <strong>{sheet.label}</strong>
            {count > 1 && <span class="small">{padWords.copies(count)}</span>}
          </p>
          <div class="numbered-faces">
            <Face side={sheet.front} face="front" />
            <Face side={sheet.back} face="back" />
          </div>
        </li>
      ))}
    </ul>
  );
}

function Face({ side, face }: { side: Side | null; face: 'front' | 'back' }): VNode {
  return (
    <figure>
      {side === null ? (
        <div class="face missing" />
      ) : (
        <img src={swatchAt(side.swatch, 160)} alt="" width="160" height="160" />
      )}
      <figcaption class="small">
        {side === null ? padWords.missing[face] : guideWords.face[face]}
      </figcaption>
    </figure>
  );
}
