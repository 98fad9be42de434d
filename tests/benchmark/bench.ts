/**
 * npm run bench [topic ...] [-- --json]
 *
 * Prints every figure beside its bar, writes results.md beside this file so that a change shows in
 * the diff, and ends with exit code 1 when a bar is missed.
 */
import { readFileSync, writeFileSync, existsSync } from 'node:fs';
import { cpus, totalmem } from 'node:os';
import { fileURLToPath } from 'node:url';
import { misses } from './figure.ts';
import type { Figure, Topic } from './figure.ts';

/** Nothing lost, nothing fallen over: `trust` asks for all of these. */
const TRUST = ['kills', 'hostile', 'crowd', 'soak', 'growth'] as const;
const TOPICS = ['photos', 'plan', 'cutting', 'supplies', 'page', ...TRUST] as const;
type TopicName = (typeof TOPICS)[number];
type Results = Partial<Record<TopicName, readonly Figure[]>>;

const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

const asked = process.argv
  .slice(2)
  .filter((word) => !word.startsWith('--'))
  .flatMap((word) => (word === 'trust' ? TRUST : [word]));
const unknown = asked.filter((word) => !TOPICS.some((topic) => topic === word));
if (unknown.length > 0) {
  console.error(
    `No such topic: ${unknown.join(', ')}. There are: ${TOPICS.join(', ')}, and trust for the last five.`,
  );
  process.exit(2);
}
const json = process.argv.includes('--json');
const chosen = TOPICS.filter((topic) => asked.length === 0 || asked.includes(topic));

const results: Results = {};
for (const name of chosen) {
  if (!json) console.log(`\n${name}`);
  results[name] = await run(name);
  if (!json) for (const figure of results[name]) console.log(line(figure));
}
record(results);
if (json) console.log(JSON.stringify({ machine: machine(), results }, null, 2));

const missed = Object.values(results).flat().filter(misses);
if (!json)
  console.log(`\n${missed.length === 0 ? 'No bar missed.' : `${missed.length} bars missed.`}`);
process.exit(missed.length === 0 ? 0 : 1);

async function run(name: TopicName): Promise<readonly Figure[]> {
  const module = (await import(`./${name}.ts`)) as Record<string, Topic>;
  const topic = module[name];
  if (topic === undefined) throw new Error(`tests/benchmark/${name}.ts exports no topic '${name}'`);
  return topic();
}

function line(figure: Figure): string {
  const mark = figure.bar === null ? ' ' : misses(figure) ? 'x' : '+';
  return `  ${mark} ${figure.name}: ${amount(figure)}${bar(figure)}${figure.note === undefined ? '' : `  (${figure.note})`}`;
}

function amount(figure: Figure): string {
  if (Number.isNaN(figure.value)) return 'skipped';
  return `${Number(figure.value.toPrecision(4))}${figure.unit === '' ? '' : ` ${figure.unit}`}`;
}

function bar(figure: Figure): string {
  return figure.bar === null ? '' : `, bar: at ${figure.bar.at} ${figure.bar.value}`;
}

function machine(): string {
  const lock = JSON.parse(readFileSync(here('../../package-lock.json'), 'utf8')) as {
    packages: Record<string, { version?: string }>;
  };
  const version = (name: string): string =>
    `${name} ${lock.packages[`node_modules/${name}`]?.version ?? 'missing'}`;
  const named = ['sharp', 'ml-kmeans', 'culori', 'fastify'].map(version).join(', ');
  const cores = cpus();
  return `${cores[0]?.model ?? 'unknown processor'}, ${cores.length} cores, ${Math.round(totalmem() / 2 ** 30)} GiB; Node ${process.versions.node}; ${named}`;
}

/** Keeps what other topics wrote before and replaces those that ran now. */
function record(fresh: Results): void {
  const file = here('results.md');
  const old = existsSync(file) ? readFileSync(file, 'utf8') : '';
  const sections = TOPICS.flatMap((name) => {
    const figures = fresh[name];
    if (figures !== undefined) return [section(name, figures)];
    const kept = new RegExp(`^## ${name}\\n[\\s\\S]*?(?=^## |(?![\\s\\S]))`, 'm').exec(old);
    return kept === null ? [] : [kept[0].trimEnd()];
  });
  const head = '# Benchmark\n\nWritten by `npm run bench`; `x` marks a missed bar.';
  writeFileSync(file, `${[head, ...sections].join('\n\n')}\n`);
}

function section(name: TopicName, figures: readonly Figure[]): string {
  const rows = figures.map((figure) => {
    const mark = figure.bar === null ? '' : misses(figure) ? 'x' : 'ok';
    const limit = figure.bar === null ? '' : `at ${figure.bar.at} ${figure.bar.value}`;
    return `| ${figure.name} | ${amount(figure)} | ${limit} | ${mark} | ${figure.note ?? ''} |`;
  });
  return [
    `## ${name}\n`,
    `${machine()}\n`,
    '| figure | measured | bar | | note |\n|---|---|---|---|---|',
    ...rows,
  ].join('\n');
}
