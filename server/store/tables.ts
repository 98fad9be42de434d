/** The tables of the database, column by column. Values with a form of their own are kept as JSON text. */
export interface Tables {
  pads: {
    id: string;
    name: string;
    /** Sheet size in units of 1/320 mm. */
    width: number;
    height: number;
    created_at: string;
    revision: number;
    /** The person who has it. */
    owner: string;
  };
  /** The last revision of pads that were deleted; one that is brought again goes on from there. */
  gone_pads: { id: string; revision: number };
  photos: {
    id: string;
    /** Null for a photo of supplies. */
    pad: string | null;
    face: 'front' | 'back' | null;
    arrangement: string;
    hash: string;
    picture: string;
    doc: string;
    created_at: string;
    revision: number;
    /** Order of arrival. */
    turn: number;
    owner: string;
  };
  sides: {
    id: string;
    pad: string;
    photo: string;
    /** Place in the photo, in reading order. */
    place: number;
    swatch: string;
    doc: string;
    revision: number;
  };
  sheets: {
    id: string;
    pad: string;
    label: string;
    copies: number;
    front: string | null;
    back: string | null;
    /** Place in the pad. */
    place: number;
    revision: number;
  };
  supplies: {
    id: string;
    kind: 'cardstock' | 'ink';
    name: string;
    photo: string | null;
    doc: string;
    created_at: string;
    revision: number;
    /** Order of arrival. */
    turn: number;
    owner: string;
  };
  layouts: { id: string; doc: string; created_at: string; turn: number; owner: string };
  plans: {
    id: string;
    pad: string;
    /** The plan that it changed, or followed. */
    made_from: string | null;
    /** 1 when its cards were chosen anew, so that it only follows that plan. */
    anew: number;
    cards: number;
    value: number;
    doc: string;
    created_at: string;
    turn: number;
  };
  /** Parts of sheets that were kept for the next batch; sizes in units of 1/320 mm. */
  leftovers: {
    id: string;
    pad: string;
    sheet: string;
    label: string;
    width: number;
    height: number;
    /** The plan that left it; null for one that she has put in herself. */
    plan: string | null;
    created_at: string;
  };
  /** Steps of a guide that are done. */
  ticks: { plan: string; step: string };
  /** Swatches that a plan draws with; they stay when the side is read again or its photo deleted. */
  plan_swatches: { plan: string; swatch: string };
  /** Photos that wait to be read, and for a sender who has her answer already what came of them. */
  uploads: {
    id: string;
    pad: string;
    owner: string;
    face: 'front' | 'back';
    arrangement: string;
    hash: string;
    /** Where it waits. */
    file: string;
    /** Bytes. */
    size: number;
    told: string;
    created_at: string;
    /** 1 when its sender asks later what came of it. */
    acknowledged: number;
    tries: number;
    /** The process that reads it, and until when that holds. */
    worker: string | null;
    until: string | null;
    photo: string | null;
    problem: string | null;
    /** Order of arrival. */
    turn: number;
  };
  /** Requests that carried a key, and what they made. */
  requests: { key: string; fingerprint: string; made: string; created_at: string };
  /** Single facts about the whole folder. */
  facts: { name: string; value: string };
  people: { id: string; name: string; created_at: string };
  /** What a device shows to be let in; of its secret word only the hash is kept. */
  keys: {
    id: string;
    person: string;
    /** The only pad that it opens, for a phone; null for all that the person has. */
    pad: string | null;
    name: string;
    hash: string;
    created_at: string;
  };
  /** Words that give a key, once and for a while. */
  codes: { hash: string; person: string; pad: string | null; name: string; expires_at: string };
}
