import type { Corner, Paint, Paper, Scene } from './scene.ts';
import { random } from './scene.ts';
import { CARD_WHITE, PRINTS, plainPaint } from './scene-papers.ts';

/** How a scene of sheets is laid out; everything else comes from the seed. */
export interface Laid {
  readonly columns: number;
  readonly rows: number;
  /** Millimetres between neighbours. */
  readonly gap: number;
  /** Degrees each sheet may be turned. */
  readonly turn: number;
  readonly table: Paint;
  readonly seed: number;
  readonly width: number;
  readonly prints?: readonly (keyof typeof PRINTS)[];
  readonly card?: boolean;
  readonly tilt?: number;
  readonly cast?: number;
}

export const SHEET = 152.4;

/** Sheets in rows and columns as she lays them, photographed by hand: a little tilt, uneven light. */
export function laidOut(laid: Laid): Scene {
  const chance = random(laid.seed);
  const kinds = laid.prints ?? (Object.keys(PRINTS) as (keyof typeof PRINTS)[]);
  const pitch = SHEET + laid.gap;
  const margin = 40;
  const cardSpace = laid.card === true ? 70 : 0;
  const span = {
    width: laid.columns * pitch - laid.gap + 2 * margin + cardSpace,
    height: laid.rows * pitch - laid.gap + 2 * margin,
  };
  const papers: Paper[] = Array.from({ length: laid.columns * laid.rows }, (_, i) => ({
    centre: [
      margin + SHEET / 2 + pitch * (i % laid.columns),
      margin + SHEET / 2 + pitch * Math.floor(i / laid.columns),
    ],
    turned: laid.turn * (2 * chance() - 1),
    width: SHEET,
    height: SHEET,
    paint: PRINTS[kinds[Math.floor(chance() * kinds.length)]!](Math.floor(100 * chance())),
  }));
  if (laid.card === true)
    papers.push({
      centre: [span.width - margin - 20, span.height / 2],
      turned: 8 * (2 * chance() - 1),
      width: 54,
      height: 86,
      paint: plainPaint(CARD_WHITE),
    });
  const height = Math.round((laid.width * span.height) / span.width);
  const tilt = laid.tilt ?? 0.04;
  const off = (): number => tilt * laid.width * (2 * chance() - 1) * 0.5;
  const seen: [Corner, Corner, Corner, Corner] = [
    [off(), off()],
    [laid.width + off(), off()],
    [laid.width + off(), height + off()],
    [off(), height + off()],
  ];
  const slope = [0.25 * (2 * chance() - 1), 0.25 * (2 * chance() - 1)];
  const cast = laid.cast ?? 0.1;
  const gains = [1 + cast * (2 * chance() - 1), 1, 1 + cast * (2 * chance() - 1)];
  const exposure = 0.7 + 0.15 * chance();
  return {
    width: laid.width,
    height,
    table: laid.table,
    papers,
    seen,
    span,
    light: (u, v) => {
      const level = exposure * (1 + slope[0]! * (u - 0.5) + slope[1]! * (v - 0.5));
      return [level * gains[0]!, level * gains[1]!, level * gains[2]!];
    },
    noise: 2,
    seed: laid.seed,
  };
}
