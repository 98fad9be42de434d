import { z } from 'zod';

export const Health = z
  .object({
    status: z.enum(['ok', 'starting', 'failing']),
    /** The process answers. */
    live: z.boolean(),
    /** It can take work: the store answers and takes a file, and the demo pad, if one is wanted, is read. */
    ready: z.boolean(),
    version: z.string(),
    /** Why nothing can be saved; left out when it can. What is there can be read all the same. */
    cannotSave: z.enum(['disk-full', 'cannot-write']).optional(),
    /** What it is doing while it starts. */
    doing: z.string().optional(),
  })
  .meta({ id: 'Health' });

export type Health = z.infer<typeof Health>;
