import type * as Wire from '../../contract/layouts.ts';
import type { Box, Layer, Layout, Shape } from '../../layouts/layout.ts';
import { exactLength } from '../../lengths/format-length.ts';
import type { Length, Ruler } from '../../lengths/length.ts';
import { parseLength, parsePosition } from '../../lengths/parse-length.ts';
import { rulerOf, sizeFromWire, sizeOnWire } from './sizes.ts';

export function layoutFromWire(layout: Wire.Layout): Layout {
  const { id, name, card, fold, layers, elements } = layout;
  return {
    id,
    name,
    card: sizeFromWire(card, 'card'),
    fold: {
      kind: fold.kind,
      flat: sizeFromWire(fold.flat, 'fold.flat'),
      scores: fold.scores.map((score, at) => parseLength(score, `fold.scores[${at}]`)),
      scoreFrom: fold.scoreFrom,
    },
    layers: layers.map((layer, at) => layerFromWire(layer, `layers[${at}]`)),
    ...(elements === undefined
      ? {}
      : {
          elements: elements.map(({ box, ...rest }, at) => ({
            ...rest,
            box: boxFromWire(box, `elements[${at}].box`),
          })),
        }),
  };
}

function layerFromWire(layer: Wire.Layer, field: string): Layer {
  const { id, role, material, box, shape, paper, called } = layer;
  return {
    id,
    role,
    material,
    paper,
    box: boxFromWire(box, `${field}.box`),
    shape: shapeFromWire(shape, `${field}.shape`),
    ...(called === undefined ? {} : { called }),
  };
}

function boxFromWire({ x, y, width, height }: Wire.Layer['box'], field: string): Box {
  return {
    x: parsePosition(x, `${field}.x`),
    y: parsePosition(y, `${field}.y`),
    width: parseLength(width, `${field}.width`),
    height: parseLength(height, `${field}.height`),
  };
}

function shapeFromWire(shape: Wire.Layer['shape'], field: string): Shape {
  switch (shape.kind) {
    case 'rounded':
      return { kind: 'rounded', radius: parseLength(shape.radius, `${field}.radius`) };
    case 'banner':
      return { kind: 'banner', notch: parseLength(shape.notch, `${field}.notch`) };
    case 'corners':
      return {
        kind: 'corners',
        points: shape.points.map(({ x, y }, at) => ({
          x: parsePosition(x, `${field}.points[${at}].x`),
          y: parsePosition(y, `${field}.points[${at}].y`),
        })),
      };
    default:
      return shape;
  }
}

export function layoutOnWire(layout: Layout): Wire.Layout {
  const { id, name, card, fold, layers, elements } = layout;
  const ruler = rulerOf(card);
  const text = (length: Length): string => exactLength(length, ruler);
  return {
    id,
    name,
    card: sizeOnWire(card),
    fold: {
      kind: fold.kind,
      flat: { width: text(fold.flat.width), height: text(fold.flat.height) },
      scores: fold.scores.map(text),
      scoreFrom: fold.scoreFrom,
    },
    layers: layers.map((layer) => layerOnWire(layer, ruler)),
    ...(elements === undefined
      ? {}
      : { elements: elements.map(({ box, ...rest }) => ({ ...rest, box: boxOnWire(box, text) })) }),
  };
}

function layerOnWire(layer: Layer, ruler: Ruler): Wire.Layer {
  const { id, role, material, box, shape, paper, called } = layer;
  const text = (length: Length): string => exactLength(length, ruler);
  return {
    id,
    role,
    material,
    paper,
    box: boxOnWire(box, text),
    shape: shapeOnWire(shape, text),
    ...(called === undefined ? {} : { called }),
  };
}

function boxOnWire(box: Box, text: (length: Length) => string): Wire.Layer['box'] {
  return { x: text(box.x), y: text(box.y), width: text(box.width), height: text(box.height) };
}

function shapeOnWire(shape: Shape, text: (length: Length) => string): Wire.Layer['shape'] {
  switch (shape.kind) {
    case 'rounded':
      return { kind: 'rounded', radius: text(shape.radius) };
    case 'banner':
      return { kind: 'banner', notch: text(shape.notch) };
    case 'corners':
      return {
        kind: 'corners',
        points: shape.points.map(({ x, y }) => ({ x: text(x), y: text(y) })),
      };
    default:
      return shape;
  }
}
