/**
 * Nothing that was acknowledged is lost: the service is killed 200 times while photos are sent and read,
 * sheets renamed, plans made and steps ticked off. Loopback only.
 *
 *   npm run bench kills            npx tsx tests/benchmark/kills.ts --rounds 20
 */
import sharp from 'sharp';
import { killRounds } from '../http/kill-rounds.ts';
import type { KillReport } from '../http/kill-rounds.ts';
import { alone, numberAfter } from './alone.ts';
import { compiled } from './compiled.ts';
import type { Figure, Topic } from './figure.ts';
import { inFolder, samplePhoto } from './running-service.ts';

const SEED = 20260504;

export const kills: Topic = () =>
  inFolder(async (folder) => {
    const photo = await sharp(await samplePhoto())
      .resize(480)
      .jpeg()
      .toBuffer();
    const script = [await compiled('tests/http/serve-to-be-killed.ts')];
    const rounds = numberAfter('--rounds') ?? 200;
    const start = { script, desk: 'fake' } as const;
    return figuresOf(await killRounds(folder, { rounds, seed: SEED, start, photo, tell }));
  });

/** Every twentieth round says how far it is, and a fault at once. */
function tell({ rounds, acknowledged, lost, halfSeen, failedStarts }: KillReport): void {
  const faults = lost.length + halfSeen.length + failedStarts;
  if (rounds % 20 !== 0 && faults === told) return;
  told = faults;
  console.error(`${rounds} kills, ${acknowledged} things acknowledged, ${faults} faults`);
}
let told = 0;

function figuresOf(report: KillReport): Figure[] {
  const { rounds, acknowledged, lost, halfSeen, failedStarts, cutOff, orphans } = report;
  const cut = Object.entries(cutOff)
    .sort()
    .map(([way, count]) => `${count} ${way}`);
  for (const fault of [...lost, ...halfSeen]) console.error(fault);
  const none = { at: 'most', value: 0 } as const;
  const note = `${rounds} kills, ${acknowledged} things acknowledged; under way at the kill: ${cut.join(', ')}; a real photo was being read in every fourth round; seed ${SEED}`;
  return [
    { name: 'acknowledged things lost to kills', value: lost.length, unit: '', bar: none, note },
    { name: 'half-seen states after kills', value: halfSeen.length, unit: '', bar: none },
    { name: 'failed starts after kills', value: failedStarts, unit: '', bar: none },
    { name: 'processes left behind by kills', value: orphans, unit: '', bar: none },
  ];
}

await alone(import.meta.url, kills);
