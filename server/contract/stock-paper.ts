import { z } from 'zod';

export const StockPaper = z.enum(['letter', 'a4']);

/** Which sheets her cardstock comes in. */
export const StockAsked = z.object({
  stock: StockPaper.optional().describe(
    'Sheets of her cardstock: 8 1/2 x 11 in or A4. Left out: those of the paper asked for, else those that are whole on the ruler.',
  ),
});

export type StockPaper = z.infer<typeof StockPaper>;
