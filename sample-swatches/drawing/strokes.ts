import type { Chance } from '../chance.ts';

/** Short forms for the few things that all prints are drawn with; lengths in millimetres, angles in degrees. */

export const n = (value: number): string => String(Math.round(value * 1000) / 1000);

export function fill(path: string, paint: string): string {
  return `<path d="${path}" fill="${paint}"/>`;
}

export function line(path: string, paint: string, width: number): string {
  return `<path d="${path}" fill="none" stroke="${paint}" stroke-width="${n(width)}" stroke-linecap="round" stroke-linejoin="round"/>`;
}

export function dot(x: number, y: number, radius: number, paint: string): string {
  return `<circle cx="${n(x)}" cy="${n(y)}" r="${n(radius)}" fill="${paint}"/>`;
}

export function oval(x: number, y: number, rx: number, ry: number, paint: string): string {
  return `<ellipse cx="${n(x)}" cy="${n(y)}" rx="${n(rx)}" ry="${n(ry)}" fill="${paint}"/>`;
}

export function box(x: number, y: number, width: number, height: number, paint: string): string {
  return `<rect x="${n(x)}" y="${n(y)}" width="${n(width)}" height="${n(height)}" fill="${paint}"/>`;
}

/** Moves a drawing that was made around 0, 0. */
export function placed(x: number, y: number, turn: number, size: number, inner: string): string {
  return `<g transform="translate(${n(x)} ${n(y)}) rotate(${n(turn)}) scale(${n(size)})">${inner}</g>`;
}

/** A petal or round leaf from 0, 0 upwards. */
export function petal(length: number, width: number, paint: string, turn = 0): string {
  const w = width * 0.68;
  const path = `M0 0C${n(-w)} ${n(-length * 0.35)} ${n(-w)} ${n(-length)} 0 ${n(-length)}C${n(w)} ${n(-length)} ${n(w)} ${n(-length * 0.35)} 0 0Z`;
  return turn === 0
    ? fill(path, paint)
    : `<g transform="rotate(${n(turn)})">${fill(path, paint)}</g>`;
}

/** A leaf with a point, from 0, 0 upwards. */
export function leaf(length: number, width: number, paint: string, turn = 0): string {
  const w = width * 0.72;
  const path = `M0 0C${n(-w)} ${n(-length * 0.3)} ${n(-w * 0.8)} ${n(-length * 0.75)} 0 ${n(-length)}C${n(w * 0.8)} ${n(-length * 0.75)} ${n(w)} ${n(-length * 0.3)} 0 0Z`;
  return turn === 0
    ? fill(path, paint)
    : `<g transform="rotate(${n(turn)})">${fill(path, paint)}</g>`;
}

/** A smooth closed outline through points (Catmull-Rom as Bezier curves). */
export function smooth(points: readonly (readonly [number, number])[], closed = true): string {
  const count = points.length;
  const at = (index: number): readonly [number, number] =>
    closed ? points[(index + count) % count]! : points[Math.min(count - 1, Math.max(0, index))]!;
  let path = `M${n(at(0)[0])} ${n(at(0)[1])}`;
  for (let i = 0; i < (closed ? count : count - 1); i++) {
    const [p, q, r, s] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    path += `C${n(q[0] + (r[0] - p[0]) / 6)} ${n(q[1] + (r[1] - p[1]) / 6)} ${n(r[0] - (s[0] - q[0]) / 6)} ${n(r[1] - (s[1] - q[1]) / 6)} ${n(r[0])} ${n(r[1])}`;
  }
  return closed ? `${path}Z` : path;
}

/** A round shape as a hand would draw it. */
export function pebble(radius: number, chance: Chance, uneven = 0.15): string {
  const corners = 8;
  return smooth(
    Array.from({ length: corners }, (_, k) => {
      const angle = (2 * Math.PI * k) / corners;
      const r = radius * (1 + uneven * (2 * chance() - 1));
      return [r * Math.cos(angle), r * Math.sin(angle)] as const;
    }),
  );
}

export function star(points: number, radius: number, inner: number): string {
  const corners = Array.from({ length: 2 * points }, (_, k) => {
    const angle = (Math.PI * k) / points - Math.PI / 2;
    const r = k % 2 === 0 ? radius : inner;
    return `${n(r * Math.cos(angle))} ${n(r * Math.sin(angle))}`;
  });
  return `M${corners.join('L')}Z`;
}

/**
 * Places spread over a tile that joins on to itself: thrown at random, then those that are too near each
 * other pushed apart until there is room around each.
 */
export function spread(
  count: number,
  side: number,
  chance: Chance,
): readonly (readonly [number, number])[] {
  const places = Array.from(
    { length: count },
    () => [chance() * side, chance() * side] as [number, number],
  );
  const room = side * Math.sqrt(1.05 / count);
  for (let round = 0; round < 60; round++)
    for (const place of places)
      for (const other of places) {
        const dx = wrapped(other[0] - place[0], side);
        const dy = wrapped(other[1] - place[1], side);
        const far = Math.hypot(dx, dy);
        if (far === 0 || far >= room) continue;
        const push = (0.2 * (room - far)) / far;
        place[0] = (place[0] - push * dx + side) % side;
        place[1] = (place[1] - push * dy + side) % side;
      }
  return places;
}

/** The short way round from a place to another on a tile that joins on to itself. */
function wrapped(difference: number, side: number): number {
  return difference - side * Math.round(difference / side);
}
