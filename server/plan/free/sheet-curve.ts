import { buildWorld } from './free-world.ts';
import type { FreeAsk, FreeWorld } from './free-world.ts';
import { searched } from './plan-freely.ts';
import { tooFew } from './too-few.ts';

/** How good a plan with so many sheets can be. */
export interface CurvePoint {
  readonly sheets: number;
  readonly value: number;
  readonly bound: number;
}

/** What fewer sheets cost, as far as it is known; `complete` when there is nothing more to find out. */
export interface SheetCurve {
  readonly points: readonly CurvePoint[];
  readonly complete: boolean;
}

/** A curve that is worked out bit by bit, so that what is known can be shown before all is. */
export interface OpenCurve {
  known(): SheetCurve;
  /** Works out the next part: first the tables bit by bit, then one number of sheets after the other, from the most down. */
  goOn(limit: FreeAsk['limit']): void;
}

/** A sheet more is not worth a smaller gain than this, of a card whose best is 1. */
const WORTH_A_SHEET = 1e-3;

/**
 * Opens the curve of the best plans for every number of sheets, from the fewest that suffice up to where more
 * sheets help no more. A plan that is there already is its first point. `goOn` refuses 'does-not-fit' when the
 * cards come out of no number of sheets, and no plan is there.
 */
export function openCurve(ask: FreeAsk, there: CurvePoint | null): OpenCurve {
  const points: CurvePoint[] = there === null ? [] : [there];
  const building = buildWorld(ask);
  let world: FreeWorld | null = null;
  let most = Infinity;
  return {
    known: () => ({ points: rising(points), complete: most < 1 }),
    goOn(limit) {
      if (world === null) {
        const { done, value } = building.next();
        if (done !== true) return;
        world = value;
        ({ most } = world);
        return;
      }
      const found = searched({ ...world, most, ask: { ...ask, limit } });
      const sheets = found.deal?.sheets.length ?? found.tight?.scheme.slots.length;
      if (sheets === undefined) {
        if (points.length === 0) throw tooFew(world);
        most = 0;
        return;
      }
      const value = found.deal?.value ?? found.tight!.plan.value;
      points.push({ sheets, value, bound: Math.max(value, found.bound) });
      most = sheets - 1;
    },
  };
}

/** The whole curve. A limit of `limitOf` that is over from the start ends it with the points it has. */
export function sheetCurve(ask: FreeAsk, limitOf: () => FreeAsk['limit']): CurvePoint[] {
  const curve = openCurve(ask, null);
  while (!curve.known().complete) {
    const limit = limitOf();
    if (curve.known().points.length > 0 && 'until' in limit && limit.until()) break;
    curve.goOn(limit);
  }
  return [...curve.known().points];
}

/** Only the points that more sheets make better: what fewer sheets can do, more can do too. */
function rising(points: readonly CurvePoint[]): CurvePoint[] {
  const out: CurvePoint[] = [];
  for (const point of [...points].sort((a, b) => a.sheets - b.sheets || b.value - a.value))
    if (point.value > (out.at(-1)?.value ?? -Infinity) + WORTH_A_SHEET) out.push(point);
  return out;
}
