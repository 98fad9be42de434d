import { signedArea } from '../geometry/polygon.ts';
import { exactLength, formatSize } from '../lengths/format-length.ts';
import { MILLIMETRE } from '../lengths/length.ts';
import type { Length } from '../lengths/length.ts';
import { Refusal, expected } from '../refusals/refusal.ts';
import { checkElements } from './check-elements.ts';
import { foldOf } from './folds.ts';
import type { Box, Layer, Layout } from './layout.ts';
import { shapeCorners } from './outline.ts';
import { visibleLayers } from './visible-layers.ts';

/** Narrower than this no trimmer holds the paper (common practice, no source). */
const NARROWEST = 3 * MILLIMETRE;

/** Refuses a layout that cannot be made, with the layer, the reason and the mend. */
export function checkLayout(layout: Layout): void {
  checkBase(layout);
  checkFold(layout);
  checkNames(layout);
  layout.layers.forEach((layer, index) => {
    const field = `layers[${index}]`;
    checkInside(layer, layout, field);
    checkShape(layer, field);
  });
  checkSeen(layout);
  checkElements(layout);
}

function checkBase({ layers, card }: Layout): void {
  const base = layers[0];
  const { x, y, width, height } = base?.box ?? { x: -1 };
  const whole = x === 0 && y === 0 && width === card.width && height === card.height;
  if (base?.role !== 'base' || base.shape.kind !== 'rectangle' || !whole)
    throw expected(
      'a base as large as the card',
      'layers[0]',
      base?.role,
      'Make the lowest layer the base, as large as the card front.',
      'does-not-fit',
    );
  const second = layers.findIndex((layer, index) => index > 0 && layer.role === 'base');
  if (second > 0)
    throw expected('one base', `layers[${second}].role`, 'base', 'Call this layer a panel.');
}

function checkFold({ fold, card }: Layout): void {
  const should = foldOf(fold.kind, card, fold.scoreFrom);
  const same =
    fold.flat.width === should.flat.width &&
    fold.flat.height === should.flat.height &&
    fold.scoreFrom === should.scoreFrom &&
    fold.scores.length === should.scores.length &&
    fold.scores.every((score, index) => score === should.scores[index]);
  if (!same)
    throw expected(
      `a flat sheet of ${formatSize(should.flat, 'in')} (${formatSize(should.flat, 'mm')}) scored at ${should.scores.map((score) => exactLength(score, 'in')).join(' and ')} from the ${should.scoreFrom}`,
      'fold',
      fold,
      'Take the flat size and the score lines that follow from the card size.',
      'does-not-fit',
    );
}

function checkNames({ layers }: Layout): void {
  const names = layers.map((layer) => layer.id);
  const twice = names.findIndex((name, index) => names.indexOf(name) !== index);
  if (twice >= 0)
    throw expected(
      'a name of its own',
      `layers[${twice}].id`,
      names[twice],
      'Give every layer another name.',
      'clash',
    );
}

function checkInside({ id, box }: Layer, { card }: Layout, field: string): void {
  const over = overhang(box, card);
  if (over !== null)
    throw new Refusal({
      kind: 'does-not-fit',
      field: `${field}.box`,
      received: box,
      message: `Expected layer "${id}" to stay on the card but it leaves it at the ${over.edge} by ${exactLength(over.by, 'in')}`,
      mend: `Move or trim the layer at the ${over.edge}.`,
    });
}

function overhang(box: Box, card: Layout['card']): { edge: string; by: Length } | null {
  const past: readonly (readonly [string, number])[] = [
    ['left', 0 - box.x],
    ['top', 0 - box.y],
    ['right', box.x + box.width - card.width],
    ['bottom', box.y + box.height - card.height],
  ];
  const [edge, by] = past.find(([, over]) => over > 0) ?? [];
  return edge === undefined ? null : { edge, by: by as Length };
}

function checkShape({ id, box, shape }: Layer, field: string): void {
  if (Math.min(box.width, box.height) < NARROWEST)
    throw expected(
      `layer "${id}" to be at least 3 mm (1/8 in) wide`,
      `${field}.box`,
      exactLength(Math.min(box.width, box.height) as Length, 'in'),
      'Make it wider: a trimmer cannot hold less.',
      'does-not-fit',
    );
  const half = Math.min(box.width, box.height) / 2;
  if (shape.kind === 'rounded' && (shape.radius <= 0 || shape.radius > half))
    throw uncuttable(id, field, 'rounds its corners by more than half its width');
  if (shape.kind === 'banner' && (shape.notch <= 0 || shape.notch >= box.width))
    throw uncuttable(id, field, 'has a notch longer than itself');
  if (shape.kind === 'corners') checkCorners(id, box, shape, field);
}

/** Straight cuts through a rectangle leave only shapes without an inward corner. */
function checkCorners(id: string, box: Box, shape: Layer['shape'], field: string): void {
  const corners = shapeCorners(shape, box);
  const xs = corners.map((corner) => corner.x);
  const ys = corners.map((corner) => corner.y);
  const fills =
    Math.min(...xs) === 0 &&
    Math.max(...xs) === box.width &&
    Math.min(...ys) === 0 &&
    Math.max(...ys) === box.height;
  if (!fills) throw uncuttable(id, field, 'does not reach all four sides of its box');
  const turns = corners.map((corner, index) =>
    signedArea([
      corner,
      corners[(index + 1) % corners.length]!,
      corners[(index + 2) % corners.length]!,
    ]),
  );
  if (!turns.every((turn) => turn > 0) || windings(corners) > 1)
    throw uncuttable(id, field, 'has an inward corner, or its corners do not go round clockwise');
}

/** How many times the outline goes round: a star goes round twice though it always turns one way. */
function windings(corners: readonly { x: number; y: number }[]): number {
  const ways = corners.map((p, index) => {
    const q = corners[(index + 1) % corners.length]!;
    return Math.atan2(q.y - p.y, q.x - p.x);
  });
  const turned = ways.reduce((sum, way, index) => {
    const step = ways[(index + 1) % ways.length]! - way;
    return sum + (step < 0 ? step + 2 * Math.PI : step);
  }, 0);
  return Math.round(turned / (2 * Math.PI));
}

function uncuttable(id: string, field: string, why: string): Refusal {
  return new Refusal({
    kind: 'does-not-fit',
    field: `${field}.shape`,
    received: id,
    message: `Expected layer "${id}" to be a shape that edge-to-edge cuts can make but it ${why}`,
    mend: 'Draw it without inward corners, filling its box, or split it into two layers.',
  });
}

function checkSeen(layout: Layout): void {
  const hidden = visibleLayers(layout).findIndex((visible) => visible.area < 1);
  if (hidden >= 0)
    throw new Refusal({
      kind: 'does-not-fit',
      field: `layers[${hidden}]`,
      received: layout.layers[hidden]!.id,
      message: `Expected every layer to be seen but "${layout.layers[hidden]!.id}" is wholly hidden`,
      mend: 'Leave it out, move it up in the order, or let the layers on it be smaller.',
    });
}
