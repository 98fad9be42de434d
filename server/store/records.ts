import type { Kysely } from 'kysely';
import type { Whose } from './asker.ts';
import { keysIn } from './keys.ts';
import type { Keys } from './keys.ts';
import { factsIn } from './facts.ts';
import type { Facts } from './facts.ts';
import { layoutsIn } from './layouts.ts';
import type { Layouts } from './layouts.ts';
import { padsIn } from './pads.ts';
import type { Pads } from './pads.ts';
import { leftoversIn } from './leftovers.ts';
import type { Leftovers } from './leftovers.ts';
import { photosIn } from './photos.ts';
import type { Photos } from './photos.ts';
import { plansIn } from './plans.ts';
import type { Plans } from './plans.ts';
import { requestsIn } from './requests.ts';
import type { Requests } from './requests.ts';
import { sheetsIn } from './sheets.ts';
import type { Sheets } from './sheets.ts';
import { sidesIn } from './sides.ts';
import type { Sides } from './sides.ts';
import { suppliesIn } from './supplies.ts';
import type { Supplies } from './supplies.ts';
import type { Tables } from './tables.ts';
import { uploadsIn } from './uploads.ts';
import type { Uploads } from './uploads.ts';

/** All that is kept, noun by noun; within a transaction, or outside one for reading. */
export interface Records {
  readonly pads: Pads;
  readonly photos: Photos;
  readonly uploads: Uploads;
  readonly sides: Sides;
  readonly sheets: Sheets;
  readonly leftovers: Leftovers;
  readonly supplies: Supplies;
  readonly layouts: Layouts;
  readonly plans: Plans;
  readonly requests: Requests;
  /** Of everyone: who may not see them is kept from them at the door. */
  readonly keys: Keys;
  readonly facts: Facts;
}

/** The records that an asker may see and change; what is added is the asker's. */
export function recordsIn(db: Kysely<Tables>, whose: Whose): Records {
  return {
    pads: padsIn(db, whose),
    photos: photosIn(db, whose),
    uploads: uploadsIn(db, whose),
    sides: sidesIn(db, whose),
    sheets: sheetsIn(db, whose),
    leftovers: leftoversIn(db, whose),
    supplies: suppliesIn(db, whose),
    layouts: layoutsIn(db, whose),
    plans: plansIn(db, whose),
    requests: requestsIn(db, whose),
    keys: keysIn(db),
    facts: factsIn(db),
  };
}
