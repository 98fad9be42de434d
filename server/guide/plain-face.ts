import { hexFromLab } from '../colour/spaces.ts';
import type { Side } from '../pad/pad.ts';
import type { GuideAsk } from './ask.ts';
import { rectangle } from './drawing.ts';
import type { Extent, Mark } from './drawing.ts';
import type { Facts } from './facts.ts';
import { labelsSaid } from './said.ts';

/** A side of which no picture is kept, as bands of its colours, each as broad as its share; blank for a side never seen. */
export function plainFace(side: Side | null, x: number, y: number, size: Extent): Mark[] {
  const { width, height } = size;
  const colours = side?.palette.colours ?? [];
  if (colours.length === 0)
    return [{ kind: 'area', corners: rectangle(x, y, width, height), fill: '#ffffff' }];
  const whole = colours.reduce((sum, { share }) => sum + share, 0);
  let top = y;
  return colours.map(({ lab, share }): Mark => {
    const band = rectangle(x, top, width, (height * share) / whole);
    top += (height * share) / whole;
    return { kind: 'area', corners: band, fill: hexFromLab(lab) };
  });
}

/** Of which sheets that are cut a picture is missing, and what to do about it; null when all are there. */
export function plainNote(ask: GuideAsk, { slots }: Facts): string | null {
  const lacking = slots
    .map(({ sheet }) => sheet)
    .filter(({ front, back }) =>
      [front, back].some((side) => side !== null && ask.picture(side.id) === null),
    );
  if (lacking.length === 0) return null;
  const labels = labelsSaid([...new Set(lacking.map(({ label }) => label))]);
  return `A picture of ${labels} is missing: what it showed is drawn in its plain colours. The cuts are right all the same. Ask for the guide once more; if the picture is still missing then, delete the photo that it came from, send it again and plan again.`;
}
