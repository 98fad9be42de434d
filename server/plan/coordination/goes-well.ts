/** From this score on two looks, or a card, go well, and what makes it so is said before what is weak. A judgement. */
export const GOES_WELL = 0.7;
