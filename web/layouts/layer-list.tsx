import { useRef } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Layer, NewLayout } from '../../server/contract/layouts.ts';
import { Icon } from '../table/icon.tsx';
import { editorWords } from '../words/editor.ts';
import { layerCalled } from './layer-names.ts';
import type { PaperShown } from './layer-paper.tsx';
import { withLayer, without } from './order-layers.ts';
import { grown, moved, rulerOf, stepOf } from './place-layer.ts';

interface Props {
  readonly layout: NewLayout;
  readonly chosen: number;
  /** The layer that cannot stay as it is. */
  readonly faulty: number | null;
  readonly choose: (layer: number) => void;
  readonly settle: (layout: NewLayout, chosen?: number) => void;
  readonly letterOf: (layer: Layer) => string;
  readonly paperOf: (layer: Layer) => PaperShown | null;
}

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The layers from top to bottom; on one of them the arrow keys move it, and with Shift size it. */
export function LayerList(props: Props): VNode {
  const { layout, chosen, faulty, choose, settle, letterOf, paperOf } = props;
  const list = useRef<HTMLUListElement>(null);

  function press(event: KeyboardEvent, at: number): void {
    if (at === 0 || event.ctrlKey || event.metaKey || event.altKey) return;
    const layer = layout.layers[at]!;
    const arrow = arrows[event.key];
    if (arrow) {
      event.preventDefault();
      const step = stepOf(rulerOf(layout.card));
      const change = event.shiftKey ? grown : moved;
      const next = change(layer, layout.card, arrow[0] * step, arrow[1] * step);
      settle(withLayer(layout, at, next), at);
    } else if (event.key === 'Delete' || event.key === 'Backspace') {
      event.preventDefault();
      settle(without(layout, at), at - 1);
      list.current?.querySelector<HTMLElement>('button:not([aria-pressed="true"])')?.focus();
    }
  }

  return (
    <div>
      <ul class="layer-list" aria-label={editorWords.layers} ref={list}>
        {layout.layers
          .map((layer, at) => (
            <li key={layer.id}>
              <button
                type="button"
                class="layer-choice"
                aria-pressed={at === chosen}
                onClick={() => choose(at)}
                onKeyDown={(event) => press(event, at)}
              >
                {at === faulty && <Icon name="caution" />}
                <Chip layer={layer} paper={paperOf(layer)} letter={letterOf(layer)} />
                {layerCalled(layout, layer.id)}
                {at === faulty && <span class="unseen">{editorWords.faulty}</span>}
              </button>
            </li>
          ))
          .reverse()}
      </ul>
      <p class="small">{editorWords.keys}</p>
    </div>
  );
}

/** What the layer is made of: a scrap of its paper with its letter, or plain. */
function Chip({
  layer,
  paper,
  letter,
}: {
  layer: Layer;
  paper: PaperShown | null;
  letter: string;
}): VNode {
  return (
    <span class={`layer-chip role-${layer.role}`}>
      {paper && <img src={paper.picture} alt="" />}
      {letter !== '' && <strong>{letter}</strong>}
    </span>
  );
}
