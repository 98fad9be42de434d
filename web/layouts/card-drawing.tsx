import { useRef } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Layer, NewLayout } from '../../server/contract/layouts.ts';
import { millimetres } from '../lengths/lengths.ts';
import { ElementDrawing } from './element-drawing.tsx';
import { elementsOf, pulledElement } from './elements.ts';
import { GreetingDrawing } from './greeting-drawing.tsx';
import { LayerPaper, type PaperShown } from './layer-paper.tsx';
import { layerPath } from './layer-path.ts';
import { withLayer } from './order-layers.ts';
import { boxOf, grown, moved, rulerOf } from './place-layer.ts';
import { RulerEdges } from './ruler-edges.tsx';

interface Props {
  readonly layout: NewLayout;
  readonly chosen: number;
  readonly choose: (layer: number) => void;
  /** While a layer is on its way. */
  readonly draft: (layout: NewLayout) => void;
  /** When it has arrived. */
  readonly settle: (layout: NewLayout) => void;
  readonly letterOf: (layer: Layer) => string;
  readonly paperOf: (layer: Layer) => PaperShown | null;
}

interface Hold {
  /** The layout with what is held pulled by so many mm. */
  readonly pulled: (byX: number, byY: number) => NewLayout;
  readonly from: NewLayout;
  readonly x: number;
  readonly y: number;
}

type Change = typeof grown;

/** The card drawn large: a layer is chosen by touch, moved by pulling it and sized by its lower right corner. What listens instead of looking uses the list of layers beside it. */
export function CardDrawing(props: Props): VNode {
  const { layout, chosen, choose, draft, settle, letterOf, paperOf } = props;
  const picture = useRef<SVGSVGElement>(null);
  const hold = useRef<Hold | null>(null);
  const width = millimetres(layout.card.width) ?? 1;
  const height = millimetres(layout.card.height) ?? 1;
  const room = Math.max(width, height) * 0.08;
  const layer = layout.layers[chosen];

  function take(event: PointerEvent, at: number, by: Change): void {
    choose(at);
    if (at === 0) return;
    const held = layout.layers[at]!;
    grasp(event, (x, y) => withLayer(layout, at, by(held, layout.card, x, y)));
  }

  function grasp(event: PointerEvent, pulled: Hold['pulled']): void {
    (event.currentTarget as SVGElement).setPointerCapture(event.pointerId);
    hold.current = { pulled, from: layout, x: event.clientX, y: event.clientY };
  }

  function pulled(event: PointerEvent): NewLayout | null {
    const held = hold.current;
    const scale = picture.current?.getScreenCTM()?.a;
    if (held === null || scale === undefined) return null;
    const [x, y] = [(event.clientX - held.x) / scale, (event.clientY - held.y) / scale];
    return held.pulled(x, y);
  }

  function pull(event: PointerEvent): void {
    const next = pulled(event);
    if (next) draft(next);
  }

  function letGo(event: PointerEvent): void {
    const next = pulled(event);
    hold.current = null;
    if (next) settle(next);
  }

  function lose(): void {
    if (hold.current) draft(hold.current.from);
    hold.current = null;
  }

  const ways = { onPointerMove: pull, onPointerUp: letGo, onPointerCancel: lose };
  const corner = layer && chosen > 0 ? boxOf(layer) : null;
  return (
    <svg
      class="card-drawing"
      ref={picture}
      viewBox={`${-room} ${-room} ${width + 2 * room} ${height + 2 * room}`}
      aria-hidden="true"
    >
      <RulerEdges width={width} height={height} ruler={rulerOf(layout.card)} />
      {layout.layers.map((one, at) => (
        <g
          key={one.id}
          class={`drawn-layer role-${one.role}${at === 0 ? '' : ' movable'}`}
          onPointerDown={(event) => take(event, at, moved)}
          {...ways}
        >
          <path d={layerPath(one)} />
          <LayerPaper layer={one} paper={paperOf(one)} />
          <GreetingDrawing layer={one} elements={elementsOf(layout)} />
          {at > 0 && <Letter layer={one} letter={letterOf(one)} />}
        </g>
      ))}
      {elementsOf(layout).map((element, at) => (
        <g
          key={element.id}
          class={`drawn-element ${element.kind} movable`}
          onPointerDown={(event) => grasp(event, (x, y) => pulledElement(layout, at, x, y))}
          {...ways}
        >
          <ElementDrawing element={element} />
        </g>
      ))}
      {layer && <path class="drawn-choice" d={layerPath(layer)} />}
      {corner && (
        <g
          class="drawn-handle movable"
          onPointerDown={(event) => take(event, chosen, grown)}
          {...ways}
        >
          <circle
            class="reach"
            cx={corner.x + corner.width}
            cy={corner.y + corner.height}
            r={room * 1.05}
          />
          <circle cx={corner.x + corner.width} cy={corner.y + corner.height} r={room / 4} />
        </g>
      )}
    </svg>
  );
}

function Letter({ layer, letter }: { layer: Layer; letter: string }): VNode | null {
  if (letter === '') return null;
  const { x, y, width, height } = boxOf(layer);
  const size = Math.min(5.5, height * 0.7, width * 0.7);
  const [cx, cy] = [x + Math.min(6, width / 2), y + height / 2];
  return (
    <>
      <circle class="letter-back" cx={cx} cy={cy} r={size * 0.68} />
      <text x={cx} y={cy + size * 0.35} font-size={size}>
        {letter}
      </text>
    </>
  );
}
