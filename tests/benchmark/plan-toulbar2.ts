import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Network } from '../../server/plan/network/network.ts';

/**
 * An independent exact solver of cost networks (toulbar2, as Debian packages it) on the same instance.
 * Costs are whole numbers there: losses against the best cell of each table, times SCALE, rounded.
 */
const SCALE = 1e7;

export interface Independent {
  readonly value: number;
  /** The seconds that it states for its own search, without reading the file. */
  readonly milliseconds: number;
  /** By how much rounding may have moved the value. */
  readonly rounding: number;
}

export function hasToulbar2(): boolean {
  try {
    execFileSync('toulbar2', ['--help'], { stdio: 'ignore' });
    return true;
  } catch (error) {
    return (error as { code?: string }).code !== 'ENOENT';
  }
}

/** Solves with `toulbar2 -s=0 instance.wcsp` and the options that it uses by itself. */
export function solveIndependently(network: Network): Independent {
  const folder = mkdtempSync(join(tmpdir(), 'plan-'));
  try {
    const { text, most, tables } = written(network);
    const file = join(folder, 'instance.wcsp');
    writeFileSync(file, text);
    const said = execFileSync('toulbar2', [file], { encoding: 'utf8', maxBuffer: 1e8 });
    const found = /Optimum: (\d+) in .* and ([\d.]+) seconds/.exec(said);
    if (found === null) throw new Error(`toulbar2 did not prove an optimum: ${said.slice(-300)}`);
    return {
      value: most - Number(found[1]) / SCALE,
      milliseconds: 1000 * Number(found[2]),
      rounding: (tables + 1) / SCALE,
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function written(network: Network): { text: string; most: number; tables: number } {
  const slots = network.allowed.length;
  const kinds = network.copies.length;
  const lines: string[] = [];
  let most = 0;
  const whole = network.wides.map((wide) => {
    const every = Array.from({ length: kinds }, (_, design) => design);
    const lists = wide.scope.map(() => every);
    return { scope: wide.scope, sizes: wide.scope.map(() => kinds), data: wide.exact(lists) };
  });
  const tables = [...network.factors, ...whole];
  for (const { scope, sizes, data } of tables) {
    const best = data.reduce((top, value) => Math.max(top, value), -Infinity);
    most += best;
    const costs: string[] = [];
    data.forEach((value, cell) => {
      const cost = Math.round((best - value) * SCALE);
      if (cost > 0) costs.push(`${digitsOf(cell, sizes).join(' ')} ${cost}`);
    });
    lines.push(`${scope.length} ${scope.join(' ')} 0 ${costs.length}`);
    if (costs.length > 0) lines.push(costs.join('\n'));
  }
  const top = Math.ceil(most * SCALE) + 1;
  let constraints = tables.length;
  for (const copies of new Set(network.copies)) {
    const designs = network.copies.flatMap((count, design) => (count === copies ? [design] : []));
    if (copies >= slots) continue;
    for (const set of subsets(slots, copies + 1)) {
      lines.push(`${set.length} ${set.join(' ')} 0 ${designs.length}`);
      for (const design of designs) lines.push(`${set.map(() => design).join(' ')} ${top}`);
      constraints++;
    }
  }
  const head = [
    `plan ${slots} ${kinds} ${constraints} ${top}`,
    Array.from({ length: slots }, () => kinds).join(' '),
  ];
  return { text: [...head, ...lines, ''].join('\n'), most, tables: tables.length };
}

function digitsOf(cell: number, sizes: readonly number[]): number[] {
  const digits = new Array<number>(sizes.length);
  let rest = cell;
  for (let at = sizes.length - 1; at >= 0; at--) {
    digits[at] = rest % sizes[at]!;
    rest = Math.floor(rest / sizes[at]!);
  }
  return digits;
}

function subsets(count: number, size: number, from = 0): number[][] {
  if (size === 0) return [[]];
  const out: number[][] = [];
  for (let first = from; first < count; first++)
    for (const rest of subsets(count, size - 1, first + 1)) out.push([first, ...rest]);
  return out;
}
