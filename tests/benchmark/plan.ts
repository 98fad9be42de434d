import type { Topic } from './figure.ts';
import { blindChoice, TUNED, UNSEEN } from './plan-blind.ts';
import { freeFigures } from './plan-free.ts';
import { peoplesColours } from './plan-people.ts';
import {
  copiesFigures,
  distinctFigures,
  largeFigures,
  pinFigures,
  publishedFigures,
  wholePadFigures,
} from './plan-solver.ts';

/** The coordination score and the solver with proof. */
export const plan: Topic = async () => [
  ...copiesFigures(),
  ...distinctFigures(),
  ...wholePadFigures(),
  ...pinFigures(),
  ...largeFigures(),
  ...publishedFigures(),
  ...freeFigures(),
  ...(await blindChoice('unseen seeds', UNSEEN, true)),
  ...(await blindChoice('tuning seeds', TUNED, false)),
  ...peoplesColours(),
];
