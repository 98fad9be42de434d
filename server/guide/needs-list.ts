import { hexFromLab } from '../colour/spaces.ts';
import { disc, rectangle } from './drawing.ts';
import { COLUMN } from './flow.ts';
import { HAIR, SIZES, SOFT } from './look.ts';
import { paragraph, ruleAcross } from './page.ts';
import type { Block } from './page.ts';
import type { Taken, WhatItTakes } from './what-it-takes.ts';

/** Each cardstock and ink with how much it takes and what she has; under them whether anything is to buy. */
export function needsBlocks({ taken, said }: WhatItTakes): Block[] {
  return [...taken.map(takenBlock), paragraph(said, 0, 1, COLUMN, { bold: true })];
}

/** A swatch for cardstock, a drop for ink; its words beside it. */
function takenBlock({ name, lab, said, kind, toBuy }: Taken): Block {
  const x = 11;
  const head = paragraph(name, x, 0, COLUMN - x, { size: SIZES.note, bold: true });
  const body = paragraph(said, x, head.height, COLUMN - x, {
    size: SIZES.note,
    ...(toBuy ? { bold: true } : { colour: SOFT }),
  });
  const height = head.height + body.height + 1.2;
  return {
    marks: [
      {
        kind: 'area',
        corners: kind === 'ink' ? disc(4.2, 4.4, 3.8) : rectangle(0, 0.5, 8.4, 7.8),
        fill: hexFromLab(lab),
        edge: { width: 0.2, colour: HAIR },
      },
      ...head.marks,
      ...body.marks,
      ruleAcross(0, height, COLUMN),
    ],
    height: height + 0.6,
  };
}
