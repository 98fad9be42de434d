/** Ways of laying squares and smears in which finding them is hard, as scenes of the samples' generator. */
import { makePad } from '../../sample-swatches/pad/make-pad.ts';
import { smearsScene, squaresScene } from '../../sample-swatches/scene/make-scene.ts';
import type { Place, Scene, SurfaceKind, Thing } from '../../sample-swatches/scene/scene.ts';
import { labFromHex } from '../../server/colour/spaces.ts';
import type { Lab } from '../../server/colour/lab.ts';

export interface SupplySituation {
  readonly name: string;
  readonly scene: (seed: number) => Scene;
}

interface Named {
  readonly name: string;
  readonly lab: Lab;
}

const PIXELS = 1600;
const SIDE = 60;

/** As many colours of made-up pads, the pale ones alone or all, no two of them alike. */
function coloursOf(seed: number, count: number, isAsked: (lab: Lab) => boolean): Named[] {
  const hexes = new Set<string>();
  for (let pad = seed; hexes.size < count; pad += 100)
    for (const { front, back } of makePad(pad).sheets)
      for (const hex of [...front.colours, ...back.colours])
        if (hexes.size < count && isAsked(labFromHex(hex))) hexes.add(hex);
  return [...hexes].map((hex) => ({ name: hex, lab: labFromHex(hex) }));
}

interface Laid {
  readonly colours: readonly Named[];
  /** Millimetres between neighbours. */
  readonly gap: number;
  readonly surface: SurfaceKind;
  /** The white card: under the squares, beside them, or none. */
  readonly card: 'under' | 'beside' | 'none';
}

function squaresLaid(seed: number, { colours, gap, surface, card }: Laid): Scene {
  const scene = squaresScene(seed, 'normal', colours, { pixels: PIXELS, surface });
  const columns = Math.min(3, colours.length);
  const rows = Math.ceil(colours.length / columns);
  const step = SIDE + gap;
  const across = columns * step - gap;
  const down = rows * step - gap;
  const cardThing = scene.things.find(({ kind }) => kind === 'card')!;
  const under: Place = {
    x: across / 2 - SIDE / 2,
    y: down / 2 - SIDE / 2,
    turn: 0.5,
    width: across + 34,
    height: down + 34,
  };
  const beside: Place = { x: 10, y: down - SIDE / 2 + 32, turn: 2, width: 70, height: 40 };
  const squares = scene.things
    .filter(({ kind }) => kind === 'square')
    .map((thing, index): Thing => {
      const stray = (((1013 * (seed + 1) + 337 * index) % 200) / 100 - 1) * 0.5;
      return {
        ...thing,
        place: {
          ...thing.place,
          x: (index % columns) * step,
          y: Math.floor(index / columns) * step,
          turn: stray,
        },
      };
    });
  const things: Thing[] =
    card === 'none'
      ? squares
      : card === 'under'
        ? [{ ...cardThing, place: under }, ...squares]
        : [...squares, { ...cardThing, place: beside }];
  const view = {
    x: -SIDE / 2 - 32,
    y: -SIDE / 2 - 32,
    width: across + 64,
    height: down + 64 + (card === 'beside' ? 60 : 0),
  };
  return { ...scene, things, camera: { ...scene.camera, view } };
}

/** The same smears, on a card so large that all of its edges lie outside the picture. */
function onLargeCard(scene: Scene): Scene {
  const [card, ...smears] = scene.things;
  const { place } = card!;
  const large = { ...place, width: 2 * place.width, height: 2 * place.height };
  return { ...scene, things: [{ ...card!, place: large }, ...smears] };
}

const any = (): boolean => true;
const pale = ({ l }: Lab): boolean => l > 78;
const inky = ({ l }: Lab): boolean => l < 75;

export const SUPPLY_SITUATIONS: readonly SupplySituation[] = [
  {
    name: 'six squares 4 mm apart on white card',
    scene: (seed) =>
      squaresLaid(seed, {
        colours: coloursOf(seed, 6, any),
        gap: 4,
        surface: 'grey desk',
        card: 'under',
      }),
  },
  {
    name: 'six squares 4 mm apart, white card beside',
    scene: (seed) =>
      squaresLaid(seed, {
        colours: coloursOf(seed, 6, any),
        gap: 4,
        surface: 'grey desk',
        card: 'beside',
      }),
  },
  {
    name: 'two pale squares 4 mm apart, no card',
    scene: (seed) =>
      squaresLaid(seed, {
        colours: coloursOf(seed, 2, pale),
        gap: 4,
        surface: 'grey desk',
        card: 'none',
      }),
  },
  {
    name: 'six pale squares 4 mm apart, no card',
    scene: (seed) =>
      squaresLaid(seed, {
        colours: coloursOf(seed, 6, pale),
        gap: 4,
        surface: 'cutting mat',
        card: 'none',
      }),
  },
  {
    name: 'six squares on a grey desk, no card',
    scene: (seed) =>
      squaresLaid(seed, {
        colours: coloursOf(seed, 6, any),
        gap: 14,
        surface: 'grey desk',
        card: 'none',
      }),
  },
  {
    name: 'six uneven smears on white card',
    scene: (seed) => smearsScene(seed, 'normal', coloursOf(seed, 6, inky), { pixels: PIXELS }),
  },
  {
    name: 'six uneven smears on a card that fills the picture',
    scene: (seed) =>
      onLargeCard(smearsScene(seed, 'normal', coloursOf(seed, 6, inky), { pixels: PIXELS })),
  },
];
