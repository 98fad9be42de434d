/** The demo pad, read from photos of the project through the same steps as her own. */
import { createReadStream, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { SizeText, words } from './contract/values.ts';
import type { Edges } from './http/edges.ts';
import { takePhoto } from './http/take-photo.ts';
import { takeSupplies } from './http/take-supplies.ts';
import { sizeFromWire } from './http/wire/sizes.ts';
import { Refusal } from './refusals/refusal.ts';

const Demo = z.object({
  pad: z.object({ name: words(120), sheetSize: SizeText }),
  photos: z.array(
    z.object({ file: z.string(), side: z.enum(['front', 'back']), arrangement: words(80) }),
  ),
  supplies: z.array(
    z.object({ file: z.string(), kind: z.enum(['cardstock', 'ink']), names: z.array(words(80)) }),
  ),
});

const FACT = 'demo pad';
const DONE = 'done';

/**
 * Reads the demo pad into an empty store. Each step is kept as it is done, so a start that was cut short
 * goes on where it stopped; a demo pad that she has deleted does not come back.
 */
export async function loadDemo(
  edges: Edges,
  folder: string,
  say: (line: string) => void,
): Promise<void> {
  const state = await edges.store.read.facts.at(FACT);
  if (state === DONE || !existsSync(join(folder, 'demo.json'))) return;
  if (state === null && (await edges.store.read.pads.all()).length > 0) return;
  const demo = Demo.parse(JSON.parse(readFileSync(join(folder, 'demo.json'), 'utf8')));
  const pad = state ?? (await startPad(edges, demo.pad));
  const steps = demo.photos.length + demo.supplies.length;
  say(`Reading the demo pad '${demo.pad.name}' from ${steps} photos; this is done once.`);
  let step = 0;
  const told = async (file: string, read: () => Promise<string>): Promise<void> => {
    step += 1;
    say(`  ${step} of ${steps}  ${file}: ${await read().catch(asWords)}`);
  };
  for (const { file, side, arrangement } of demo.photos)
    await told(file, async () => {
      const received = await receive(edges, join(folder, file));
      const taken = { pad, face: side, arrangement, received, tap: {} };
      const { sides } = await takePhoto(edges, taken);
      return `${sides.length} sheets, ${side}s`;
    });
  for (const { file, kind, names } of demo.supplies)
    await told(file, async () => {
      const received = await receive(edges, join(folder, file));
      const question = { key: `demo ${pad} ${file}`, fingerprint: received.hash };
      const { supplies } = await takeSupplies(edges, {
        kind,
        names,
        received,
        question,
        demoPad: pad,
      });
      return `${supplies.length} colours of ${kind}`;
    });
  await edges.store.write((records) => records.facts.put(FACT, DONE));
}

async function startPad(edges: Edges, pad: z.infer<typeof Demo>['pad']): Promise<string> {
  const id = edges.newId();
  const sheetSize = sizeFromWire(pad.sheetSize, 'sheetSize');
  await edges.store.write(async (records) => {
    const createdAt = edges.now();
    await records.pads.add({ id, name: pad.name, sheetSize, createdAt, revision: 1 });
    await records.facts.put(FACT, id);
  });
  return id;
}

function receive(edges: Edges, path: string): ReturnType<Edges['store']['files']['receive']> {
  return edges.store.files.receive(createReadStream(path) as AsyncIterable<Uint8Array>);
}

/** A photo of the demo that cannot be read is told and left out; it must not keep her from her own. */
function asWords(fault: unknown): string {
  if (fault instanceof Refusal) return `left out. ${fault.message}. ${fault.mend}`;
  throw fault;
}
