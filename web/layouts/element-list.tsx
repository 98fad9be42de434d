import type { VNode } from 'preact';
import type { NewLayout } from '../../server/contract/layouts.ts';
import { Icon } from '../table/icon.tsx';
import { editorWords } from '../words/editor.ts';
import { words } from '../words/words.ts';
import {
  elementKinds,
  elementsOf,
  MOST_ELEMENTS,
  typedElement,
  withElement,
  withoutElement,
} from './elements.ts';
import { layerCalled } from './layer-names.ts';
import { MeasureField } from './measure-field.tsx';
import { withMore } from './more-elements.ts';

interface Props {
  readonly layout: NewLayout;
  readonly chosen: number;
  /** The one that cannot stay as it is. */
  readonly faulty: number | null;
  readonly settle: (layout: NewLayout) => void;
}

const said = editorWords;

/** What is stamped or cut with a die: on which layer, where, and how large, so that it is told at once whether it fits. */
export function ElementList({ layout, chosen, faulty, settle }: Props): VNode {
  const elements = elementsOf(layout);
  return (
    <section class="elements" aria-labelledby="editor-elements">
      <h3 id="editor-elements">{said.elements}</h3>
      {elements.map((element, at) => (
        <fieldset key={element.id} class={at === faulty ? 'wrong' : undefined}>
          <legend>{said.element(element.kind, words.layerName(element.id))}</legend>
          <div class="pair measures">
            {(['width', 'height', 'x', 'y'] as const).map((what) => (
              <MeasureField
                key={what}
                what={what}
                of={element}
                take={(text) => typedElement(element, layout.card, what, text)}
                change={(next) => settle(withElement(layout, at, next))}
              />
            ))}
          </div>
          <div class="pair">
            <label class="field">
              <span>{said.onLayer}</span>
              <select
                value={element.layer}
                onChange={({ currentTarget: { value } }) =>
                  settle(withElement(layout, at, { ...element, layer: value }))
                }
              >
                {layout.layers.map(({ id }) => (
                  <option key={id} value={id}>
                    {layerCalled(layout, id)}
                  </option>
                ))}
              </select>
            </label>
            <button
              type="button"
              class="button quiet"
              onClick={() => settle(withoutElement(layout, at))}
            >
              {said.remove}
            </button>
          </div>
        </fieldset>
      ))}
      <div class="adds">
        {elementKinds.map((kind) => (
          <button
            key={kind}
            type="button"
            class="round wide"
            disabled={elements.length >= MOST_ELEMENTS || layout.layers.length < 2}
            onClick={() => settle(withMore(layout, kind, chosen))}
          >
            <Icon name="plus" />
            <span>{said.elementKinds[kind]}</span>
          </button>
        ))}
      </div>
      {elements.length >= MOST_ELEMENTS && <p class="small">{said.mostElements(MOST_ELEMENTS)}</p>}
      {layout.layers.length < 2 && <p class="small">{said.layerFirst}</p>}
    </section>
  );
}
