import type { VNode } from 'preact';
import type { CheckedLayout, NewLayout } from '../../server/contract/layouts.ts';
import { editorWords } from '../words/editor.ts';
import { words } from '../words/words.ts';
import { squeezedGreetings } from './greeting-word.ts';
import { layerCalled } from './layer-names.ts';

interface Props {
  readonly checked: CheckedLayout;
  readonly layout: NewLayout;
  readonly chosen: number;
}

/** What the service says of a layout that can be made: the borders of the chosen layer, the fold, the envelope. */
export function Told({ checked, layout, chosen }: Props): VNode {
  const id = layout.layers[chosen]?.id;
  const seen = checked.layers.find(({ layer }) => layer === id);
  const meets = checked.borders.filter(({ a, b }) => a === id || b === id);
  return (
    <div class="told small">
      {squeezedGreetings(layout).map(({ layer, elements, covered }) => (
        <p key={layer} class="squeezed">
          {editorWords.squeezed(
            elements.map(({ kind, id }) => editorWords.element(kind, words.layerName(id))),
            layerCalled(layout, layer),
            covered,
          )}
        </p>
      ))}
      {seen && <p>{editorWords.seen(seen.share)}</p>}
      {meets.length > 0 && (
        <ul aria-label={editorWords.borders}>
          {meets.map(({ a, b, length }) => (
            <li key={`${a}/${b}`}>
              {editorWords.meets(layerCalled(layout, a === id ? b : a), length)}
            </li>
          ))}
        </ul>
      )}
      {checked.notes.map((note) => (
        <p key={note}>{note}</p>
      ))}
      <p>{checked.fold}</p>
      <p>{checked.envelope}</p>
    </div>
  );
}
