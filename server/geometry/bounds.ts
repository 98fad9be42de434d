/** An upright rectangle, x right, y down, in whatever unit its points have. */
export interface Bounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The smallest upright rectangle around points; takes at least one. */
export function boundsOf(points: readonly { readonly x: number; readonly y: number }[]): Bounds {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return {
    left: Math.min(...xs),
    top: Math.min(...ys),
    right: Math.max(...xs),
    bottom: Math.max(...ys),
  };
}
