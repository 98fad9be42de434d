/**
 * The one form in which the core says no: what was expected, of what, and what came, with the mend.
 *
 * The http edge turns it into a problem detail (RFC 9457); `kind` becomes the last part of its `type`.
 */
export class Refusal extends Error {
  override readonly name = 'Refusal';
  readonly kind: RefusalKind;
  /** Where the value stands, as a path a person can follow: `cards[2].count`. */
  readonly field: string;
  /** The value as it came, shortened by the edge before it is shown. */
  readonly received: unknown;
  /** What she can do about it, as a sentence. */
  readonly mend: string;

  constructor(says: RefusalText) {
    super(says.message);
    this.kind = says.kind;
    this.field = says.field;
    this.received = says.received;
    this.mend = says.mend;
  }
}

export type RefusalKind =
  | 'not-understood' // a value that cannot be read
  | 'not-found' // a name that nothing answers to
  | 'does-not-fit' // read, but not possible on this paper or card
  | 'clash' // two wishes that cannot both hold
  | 'not-a-photo' // a file that cannot be read as a picture
  | 'nothing-found' // a picture in which nothing was found
  | 'too-large'
  | 'busy';

export interface RefusalText {
  readonly kind: RefusalKind;
  readonly field: string;
  readonly received: unknown;
  readonly message: string;
  readonly mend: string;
}

/** Says `Expected <expected> for <field> but received <received>`, the common sentence of a refusal. */
export function expected(
  what: string,
  field: string,
  received: unknown,
  mend: string,
  kind: RefusalKind = 'not-understood',
): Refusal {
  return new Refusal({
    kind,
    field,
    received,
    mend,
    message: `Expected ${what} for ${field} but received ${show(received)}`,
  });
}

function show(value: unknown): string {
  const text =
    typeof value === 'string'
      ? `"${value}"`
      : ((JSON.stringify(value) as string | undefined) ?? typeof value);
  return text.length > 80 ? `${text.slice(0, 77)}...` : text;
}
