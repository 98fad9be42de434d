import { readFile } from 'node:fs/promises';
import { setImmediate } from 'node:timers/promises';
import { z } from 'zod';
import { Plan } from '../contract/plans.ts';
import { words } from '../contract/values.ts';
import type { Received } from '../store/files.ts';
import { notAPad } from '../store/pad-archive.ts';
import type { PlanRow } from '../store/rows.ts';
import type { KeptPlan } from './make-plan.ts';
import { Hash } from './pad-contents.ts';
import { planOnWire } from './wire/plans.ts';

/** A plan that came in a file, known to be one that can be shown; its text is read again when it is kept. */
export interface PlanOfFile {
  readonly row: PlanRow;
  readonly swatches: readonly string[];
  readonly text: () => Promise<string>;
}

/** What is done with a plan later is done to the pad that it names, so that must be the pad of the file. */
const namedIn = (pad: string) =>
  z.looseObject({
    id: words(80),
    swatches: z.record(z.string(), Hash),
    pad: z.looseObject({ id: z.literal(pad) }),
    asked: z.looseObject({ pad: z.literal(pad) }),
  });

/** Looks at the plans of a file one by one, so that no more than one is in memory and others are answered between. */
export async function plansOfFile(
  pad: string,
  inContents: readonly unknown[],
  beside: readonly Received[],
): Promise<PlanOfFile[]> {
  const texts = [
    ...inContents.map((plan) => () => Promise.resolve(JSON.stringify(plan))),
    ...beside.map(
      ({ path }) =>
        () =>
          readFile(path, 'utf8'),
    ),
  ];
  const plans: PlanOfFile[] = [];
  for (const text of texts) {
    plans.push({ ...understoodPlan(pad, await text()), text });
    await setImmediate();
  }
  return plans;
}

/** Read as it will be served; if that fails, the file was changed by hand or damaged. */
function understoodPlan(pad: string, text: string): Omit<PlanOfFile, 'text'> {
  try {
    const raw: unknown = JSON.parse(text);
    const { swatches } = namedIn(pad).parse(raw);
    const plan = raw as KeptPlan;
    Plan.parse(planOnWire(plan));
    const { id, createdAt, batch, asked } = plan;
    const [cards, value] = [batch.cards.length, batch.plan.value];
    const { from = null, anew = false } = asked;
    const row = { id, pad, cards, value, createdAt, from, anew };
    return { row, swatches: Object.values(swatches) };
  } catch (fault) {
    throw notAPad(`a plan that cannot be shown: ${String(fault).slice(0, 120)}`);
  }
}
