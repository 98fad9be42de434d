import { z } from 'zod';
import { Id, words } from './values.ts';

/** A word that gives a key, once. */
export const Code = z.object({
  code: z.string().describe('Good once and for a while; it opens the address below.'),
  addresses: z
    .array(z.string())
    .describe('Where the new device finds this computer, with the code behind the #.'),
  expiresAt: z.string(),
});

/** Asks for a code: for a phone that may look at one pad and add photos to it, or for a device of her own. */
export const NewCode = z.strictObject({
  pad: Id.optional().describe('The only pad that the device may see; without it, all of yours.'),
  name: words(60).describe('What the device is called in the list of keys.'),
});

/** Brings a code and is given a key, as a cookie. */
export const NewKey = z.strictObject({ code: z.string().min(20).max(80) });

export const Key = z
  .object({
    id: Id,
    name: z.string(),
    pad: Id.nullable().describe('The only pad that it opens; null for all of yours.'),
    createdAt: z.string(),
  })
  .meta({ id: 'Key', description: 'A device that is let in.' });

export const KeyList = z.object({
  keys: z.array(Key),
  needed: z.boolean().describe('Whether a key is needed here at all; not on this computer alone.'),
});

/** Who asks, as the service sees it. */
export const Me = z.object({
  pad: Id.nullable().describe('The only pad that may be seen, for a phone; null for all.'),
  network: z.boolean().describe('Whether other devices can reach this computer.'),
});

export const NewPerson = z.strictObject({ name: words(60) });
export const Person = z.object({ id: Id, name: z.string(), createdAt: z.string() });
export const PersonList = z.object({ people: z.array(Person) });
/** A new person with the code for her first device. */
export const Invited = z.object({ person: Person, code: Code });

export type Code = z.infer<typeof Code>;
export type NewCode = z.infer<typeof NewCode>;
export type Key = z.infer<typeof Key>;
export type KeyList = z.infer<typeof KeyList>;
export type Me = z.infer<typeof Me>;
export type Person = z.infer<typeof Person>;
export type Invited = z.infer<typeof Invited>;
