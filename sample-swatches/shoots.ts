import { nightjar, tidewrack, windfall } from './pad/demo-pads.ts';
import { cardstock, inks } from './pad/demo-supplies.ts';
import type { PaperPad } from './pad/paper-pad.ts';
import { makeScene, smearsScene, squaresScene, turnedOver } from './scene/make-scene.ts';
import type { Scene, SurfaceKind } from './scene/scene.ts';
import type { PhotoOfTruth } from './truth-file.ts';

export interface Shoot extends PhotoOfTruth {
  readonly scene: Scene;
}

/** Every picture that is kept in this folder. */
export function shoots(): Shoot[] {
  return [
    ...ofPad(tidewrack, { a: 29, b: 11 }, 3600, 'grey desk'),
    ofSupplies(
      'tidewrack-cardstock.jpg',
      'cardstock',
      squaresScene(41, 'normal', cardstock, { pixels: 2400, surface: 'grey desk' }),
    ),
    ofSupplies(
      'tidewrack-inks.jpg',
      'ink',
      smearsScene(42, 'normal', inks, { pixels: 2400, surface: 'grey desk' }),
    ),
    ...ofPad(windfall, { a: 9 }, 2600, 'wood'),
    ...ofPad(nightjar, { a: 33 }, 2600, 'white board'),
  ];
}

/** Six sheets to an arrangement, each laid and lit from its own seed. */
function ofPad(
  pad: PaperPad,
  arrangements: Readonly<Record<string, number>>,
  pixels: number,
  surface: SurfaceKind,
): Shoot[] {
  const several = Object.keys(arrangements).length > 1;
  return Object.entries(arrangements).flatMap(([arrangement, seed], index) => {
    const sheets = pad.sheets.slice(6 * index, 6 * index + 6);
    const fronts = makeScene(
      seed,
      'normal',
      sheets.map(({ front }) => front),
      { pixels, surface },
    );
    const backs = turnedOver(
      fronts,
      sheets.map(({ back }) => back),
      seed,
    );
    const of = (side: 'front' | 'back', scene: Scene): Shoot => ({
      file: `${pad.name.toLowerCase()}-${several ? `${arrangement}-` : ''}${side}.jpg`,
      pad: pad.name,
      holds: 'sheets',
      side,
      arrangement,
      scene,
    });
    return [of('front', fronts), of('back', backs)];
  });
}

function ofSupplies(file: string, holds: 'cardstock' | 'ink', scene: Scene): Shoot {
  return { file, pad: tidewrack.name, holds, side: null, arrangement: null, scene };
}

/** What the service loads when it starts for the first time; names in reading order. */
export const demo = {
  pad: { name: tidewrack.name, sheetSize: { width: '6 in', height: '6 in' } },
  photos: ['a', 'b'].flatMap((arrangement) =>
    ['front', 'back'].map((side) => ({
      file: `tidewrack-${arrangement}-${side}.jpg`,
      side,
      arrangement,
    })),
  ),
  supplies: [
    {
      file: 'tidewrack-cardstock.jpg',
      kind: 'cardstock',
      names: cardstock.map(({ name }) => name),
    },
    { file: 'tidewrack-inks.jpg', kind: 'ink', names: inks.map(({ name }) => name) },
  ],
};
