import { expect, test } from 'vitest';
import { compiled } from '../compiled/compiled.ts';
import { newFolder } from '../store/folder.ts';
import { killRounds } from './kill-rounds.ts';

test('killed at random moments, the service loses nothing that it acknowledged', async () => {
  const start = { script: [compiled('tests/http/serve-to-be-killed.ts')], desk: 'fake' } as const;
  const report = await killRounds(await newFolder(), { rounds: 3, seed: 7, start });
  expect(report).toMatchObject({ lost: [], halfSeen: [], failedStarts: 0, orphans: 0 });
  expect(report.acknowledged).toBeGreaterThan(3);
});
