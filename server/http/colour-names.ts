import { allSaidColours } from '../colour/said-colour.ts';
import { hexFromLab } from '../colour/spaces.ts';
import * as Wire from '../contract/supplies.ts';
import { answers } from './answers.ts';
import type { Service } from './edges.ts';
import { labOnWire } from './wire/colours.ts';

/** The words that may be typed for a colour: one list for all. */
export function colourNameRoutes(app: Service): void {
  app.get(
    '/api/colour-names',
    {
      schema: {
        summary:
          'The words that stand for a colour, each with the colour and how far it may be off.',
        response: answers({ 200: Wire.ColourNames }),
      },
    },
    () => ({
      names: allSaidColours().map(({ words, lab, uncertainty }) => ({
        name: words,
        lab: labOnWire(lab),
        hex: hexFromLab(lab),
        uncertainty,
      })),
    }),
  );
}
