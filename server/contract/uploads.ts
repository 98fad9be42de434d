import { z } from 'zod';
import { Id, Problem } from './values.ts';

/** A photo that was taken in and is read later: what has come of it. */
export const Upload = z.object({
  id: Id,
  pad: Id,
  side: z.enum(['front', 'back']),
  arrangement: z.string(),
  createdAt: z.string(),
  state: z
    .enum(['waiting', 'read', 'refused'])
    .describe('waiting: it is safe and will be read; refused: the problem says why it was not.'),
  photo: Id.nullable(),
  problem: Problem.nullable(),
});
export const UploadList = z.object({ uploads: z.array(Upload) });

export type Upload = z.infer<typeof Upload>;
export type UploadList = z.infer<typeof UploadList>;
