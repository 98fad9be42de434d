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
  };
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
  };
  layouts: { id: string; doc: string; created_at: string; turn: number };
  plans: {
    id: string;
    pad: string;
    cards: number;
    value: number;
    doc: string;
    created_at: string;
    turn: number;
  };
  /** Swatches that a plan draws with; they stay when the side is read again or its photo deleted. */
  plan_swatches: { plan: string; swatch: string };
  /** Requests that carried a key, and what they made. */
  requests: { key: string; fingerprint: string; made: string; created_at: string };
  /** Single facts about the whole folder. */
  facts: { name: string; value: string };
}
