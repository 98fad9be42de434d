import { toMillimetres } from '../lengths/length.ts';
import type { Layer, Layout } from '../layouts/layout.ts';
import { outline } from '../layouts/outline.ts';
import type { Mark, Outline } from './drawing.ts';
import { moved } from './drawing.ts';
import { elementMarks } from './element-marks.ts';
import { foldMarks } from './fold-marks.ts';
import { greetingMarks } from './greeting-marks.ts';
import type { Paint, PaperPaint } from './paint.ts';

/** Room around the card for its shadow, in mm. */
export const CARD_ROOM = 2;

/**
 * A card front with its real papers, at true size: layers in the order of stacking, each with a soft
 * shadow on what lies under it; where words will be stamped, the word for them. The front's upper left corner is at 0, 0.
 */
export function cardMarks(layout: Layout, paint: (layerId: string) => Paint): Mark[] {
  const [base, ...upper] = layout.layers.map((layer) => {
    const face = layerMarks(layer, paint(layer.id));
    return layer.role === 'greeting'
      ? [...face, ...greetingMarks(layer, layout.elements, paint(layer.id))]
      : face;
  });
  return [...base!, ...foldMarks(layout), ...upper.flat(), ...elementMarks(layout.elements)];
}

function layerMarks(layer: Layer, paint: Paint): Mark[] {
  const corners = outline(layer);
  const face: Mark[] =
    paint.kind === 'colour'
      ? [{ kind: 'area', corners, fill: paint.hex }]
      : [{ kind: 'group', x: 0, y: 0, clip: corners, marks: [paperOf(layer, paint)] }];
  return [...shadow(corners, layer.role === 'base'), ...face, ...edge(corners)];
}

/** The swatch laid so that the cut-out part covers the layer's box. */
function paperOf(layer: Layer, { href, swatch, x, y, turned }: PaperPaint): Mark {
  const box = {
    x: toMillimetres(layer.box.x),
    y: toMillimetres(layer.box.y),
    width: toMillimetres(layer.box.width),
    height: toMillimetres(layer.box.height),
  };
  const aside = turned === 90 || turned === 270;
  const [cutWidth, cutHeight] = aside ? [box.height, box.width] : [box.width, box.height];
  return {
    kind: 'group',
    x: box.x + box.width / 2,
    y: box.y + box.height / 2,
    turned,
    marks: [{ kind: 'picture', href, x: -x - cutWidth / 2, y: -y - cutHeight / 2, ...swatch }],
  };
}

/** Three layers of thin grey, each wider and fainter, thrown to the lower right. */
function shadow(corners: Outline, far: boolean): Mark[] {
  const reach = far ? 1.6 : 1;
  return [1.1, 0.7, 0.35].map((blur) => ({
    kind: 'area',
    corners: moved(corners, 0.22 * reach, 0.34 * reach),
    fill: '#1b1a17',
    opacity: 0.1,
    edge: { width: blur * reach, colour: '#1b1a17' },
  }));
}

/** The cut edge of a paper: a hair of light on it, a hair of dark around it. */
function edge(corners: Outline): Mark[] {
  return [
    { kind: 'area', corners, opacity: 0.22, edge: { width: 0.16, colour: '#1b1a17' } },
    {
      kind: 'group',
      x: 0,
      y: 0,
      clip: corners,
      marks: [
        {
          kind: 'area',
          corners: moved(corners, 0.07, 0.07),
          opacity: 0.35,
          edge: { width: 0.14, colour: '#ffffff' },
        },
      ],
    },
  ];
}
