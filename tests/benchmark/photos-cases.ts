/** Photos to measure on: rendered from seeds as they are needed, or read from a folder with its truth. */
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  renameSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { makePad } from '../../sample-swatches/pad/make-pad.ts';
import { renderPhoto } from '../../sample-swatches/render-photo.ts';
import type { PhotoTruth } from '../../sample-swatches/render-photo.ts';
import {
  makeScene,
  smearsScene,
  squaresScene,
  turnedOver,
} from '../../sample-swatches/scene/make-scene.ts';
import type { Difficulty, Scene } from '../../sample-swatches/scene/scene.ts';
import type { TruthFile } from '../../sample-swatches/truth-file.ts';
import { labFromHex } from '../../server/colour/spaces.ts';

/**
 * Where the seeds of reported figures begin; those from 5000 to 7200, from 8000 twice and from 9000 were looked at while
 * the reading was made.
 */
export const REPORTED = 11000;

export interface Shot {
  readonly name: string;
  readonly jpeg: Uint8Array;
  readonly truth: PhotoTruth;
}

/** Fronts and, turned over in place, backs of the sheets of one pad; or supplies. */
export interface Case {
  readonly name: string;
  readonly difficulty: Difficulty;
  readonly kind: 'pad' | 'cardstock' | 'ink';
  readonly tables: readonly { readonly fronts: Shot; readonly backs: Shot | null }[];
}

const SAMPLES = fileURLToPath(new URL('../../sample-swatches/', import.meta.url));
const KEPT = join(tmpdir(), 'plyhue-bench-photos');

/** A made-up pad of six sheets on one table. */
export async function padCase(seed: number, difficulty: Difficulty, pixels: number): Promise<Case> {
  const pad = makePad(seed);
  const laid = makeScene(
    seed,
    difficulty,
    pad.sheets.map(({ front }) => front),
    { pixels },
  );
  const turned = turnedOver(
    laid,
    pad.sheets.map(({ back }) => back),
    seed,
  );
  const name = `${difficulty} ${seed}`;
  const fronts = await shot(`${name} front`, laid);
  const backs = await shot(`${name} back`, turned);
  return { name, difficulty, kind: 'pad', tables: [{ fronts, backs }] };
}

/**
 * One small picture beside a white card of its own, so that many can be read: what the white card happens to be moves all
 * colours of a picture, and only many cards tell how far stated errors are borne out. On a scan two printed sheets, as
 * sharp as in the large pictures; else the six fronts of a pad, by which bent tones are told.
 */
export async function smallCase(seed: number, difficulty: Difficulty): Promise<Case> {
  const fronts = makePad(seed).sheets.map(({ front }) => front);
  const laid =
    difficulty === 'scanner'
      ? fronts.filter(({ design }) => design.kind === 'print').slice(0, 2)
      : fronts;
  const name = `small ${difficulty} ${seed}`;
  const fronted = await shot(name, makeScene(seed, difficulty, laid, { pixels: SMALL }));
  return { name, difficulty, kind: 'pad', tables: [{ fronts: fronted, backs: null }] };
}

const SMALL = 2016;

/** Cardstock squares, or ink smears, in the colours of a made-up pad. */
export async function supplyCase(
  seed: number,
  difficulty: Difficulty,
  kind: 'cardstock' | 'ink',
  pixels: number,
): Promise<Case> {
  const hexes = new Set(
    makePad(seed).sheets.flatMap(({ front, back }) => [...front.colours, ...back.colours]),
  );
  const colours = [...hexes]
    .map((hex) => ({ name: hex, lab: labFromHex(hex) }))
    .filter(({ lab }) => kind === 'cardstock' || lab.l < 75)
    .slice(0, kind === 'cardstock' ? 8 : 6);
  const scene = (kind === 'cardstock' ? squaresScene : smearsScene)(seed, difficulty, colours, {
    pixels,
  });
  const name = `${kind} ${difficulty} ${seed}`;
  return { name, difficulty, kind, tables: [{ fronts: await shot(name, scene), backs: null }] };
}

/** Twelve sheets in one picture of 12 megapixels. */
export async function fullTable(seed: number): Promise<Shot> {
  const pad = makePad(seed, undefined, 12);
  return shot(
    `twelve ${seed}`,
    makeScene(
      seed,
      'normal',
      pad.sheets.map(({ front }) => front),
      { pixels: 4032 },
    ),
  );
}

/** A folder with a `truth.json` as in sample-swatches. */
export function folderCases(folder: string): Case[] {
  const { photos } = JSON.parse(readFileSync(join(folder, 'truth.json'), 'utf8')) as TruthFile;
  const shots = photos.map((truth) => ({
    about: truth,
    shot: { name: truth.file, jpeg: readFileSync(join(folder, truth.file)), truth },
  }));
  const pads = [...new Set(photos.filter(({ holds }) => holds === 'sheets').map(({ pad }) => pad))];
  return [
    ...pads.map((pad): Case => {
      const own = shots.filter(({ about }) => about.pad === pad && about.holds === 'sheets');
      const fronts = own.filter(({ about }) => about.side === 'front');
      const tables = fronts.map(({ about, shot: front }) => ({
        fronts: front,
        backs:
          own.find(
            (other) => other.about.side === 'back' && other.about.arrangement === about.arrangement,
          )?.shot ?? null,
      }));
      return { name: pad, difficulty: own[0]!.about.difficulty, kind: 'pad', tables };
    }),
    ...shots
      .filter(({ about }) => about.holds !== 'sheets')
      .map(({ about, shot: fronts }): Case => ({
        name: about.file,
        difficulty: about.difficulty,
        kind: about.holds as 'cardstock' | 'ink',
        tables: [{ fronts, backs: null }],
      })),
  ];
}

export const samples = (): Case[] => folderCases(SAMPLES);

/** Renders a scene, or takes it from the last run when the generator has not changed since. */
export async function shot(name: string, scene: Scene): Promise<Shot> {
  const key = createHash('sha256')
    .update(generator())
    .update(JSON.stringify(scene))
    .digest('hex')
    .slice(0, 24);
  const [picture, truth] = [join(KEPT, `${key}.jpg`), join(KEPT, `${key}.json`)];
  if (existsSync(truth))
    return {
      name,
      jpeg: readFileSync(picture),
      truth: JSON.parse(readFileSync(truth, 'utf8')) as PhotoTruth,
    };
  const made = await renderPhoto(scene);
  mkdirSync(KEPT, { recursive: true });
  keep(picture, made.jpeg);
  keep(truth, JSON.stringify(made.truth));
  return { name, ...made };
}

/** Whole or not at all: another run may be reading. */
function keep(file: string, content: Uint8Array | string): void {
  const part = `${file}.${process.pid}`;
  writeFileSync(part, content);
  renameSync(part, file);
}

let drawnBy: string | null = null;

function generator(): string {
  if (drawnBy !== null) return drawnBy;
  const sources = readdirSync(SAMPLES, { recursive: true, encoding: 'utf8' })
    .filter(
      (file) =>
        file.endsWith('.ts') &&
        !file.includes('demo') &&
        !file.includes('stages') &&
        !/^(?:shoots|render|shown-photo)\.ts$/.test(file),
    )
    .sort();
  const hash = createHash('sha256');
  for (const file of sources) hash.update(file).update(readFileSync(join(SAMPLES, file)));
  drawnBy = hash.digest('hex');
  return drawnBy;
}
