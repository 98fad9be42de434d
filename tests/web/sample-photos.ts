import path from 'node:path';
import { project } from './table.ts';

/** Fronts and backs of one tableful of the demo pad. */
export const samplePair: readonly string[] = ['front', 'back'].map((face) =>
  path.join(project, 'sample-swatches', `tidewrack-a-${face}.jpg`),
);

/** Eight squares of cardstock beside a white card. */
export const cardstockPhoto = path.join(project, 'sample-swatches', 'tidewrack-cardstock.jpg');
