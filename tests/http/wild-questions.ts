import fc from 'fast-check';
import type { Arbitrary } from 'fast-check';

/** What of a JSON Schema the OpenAPI document uses. */
export interface Schema {
  readonly type?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema | false;
  readonly prefixItems?: readonly Schema[];
  readonly propertyNames?: Schema;
  readonly additionalProperties?: Schema | boolean;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minItems?: number;
  readonly examples?: readonly unknown[];
  readonly $ref?: string;
}

/** Ids that exist, by the words under which questions name them. */
export type Known = Readonly<Record<string, string>>;

export const wildText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.constantFrom('\u0000', '\ud800', '\u202e', '__proto__', "'; drop table pads; --", '../../x'),
  fc.constantFrom('6 in', '1e999 in', '-4 mm', '¾', 'cardstock', 'front', 'NaN', ''),
  fc.string({ unit: 'grapheme', minLength: 200, maxLength: 400 }),
);

export const wildValue: Arbitrary<unknown> = fc.letrec((tie) => ({
  value: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    wildText,
    fc.double({ noNaN: false }),
    fc.constantFrom(1e308, -1, 0, 2 ** 53, null, true, false),
    fc.array(tie('value'), { maxLength: 5 }),
    fc.dictionary(fc.string({ maxLength: 8 }), tie('value'), { maxKeys: 6 }),
  ),
})).value;

/**
 * A body that a schema allows, or where one is given a right one, in which in most cases one place, whichever
 * it is, holds a wild value.
 */
export function almostRight(schema: Schema, known: Known, right?: unknown): Arbitrary<unknown> {
  const whole = allowed(schema, '', known);
  return fc
    .tuple(
      right === undefined ? whole : fc.oneof(fc.constant(right), whole),
      fc.option(fc.tuple(fc.nat(40), wildValue), { freq: 4 }),
    )
    .map(([body, wild]) => (wild === null ? body : spoilt(body, wild[0], wild[1])));
}

function allowed(schema: Schema, name: string, known: Known): Arbitrary<unknown> {
  const { type, properties, items, prefixItems, required = [] } = schema;
  if (schema.const !== undefined) return fc.constant(schema.const);
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
  const either = schema.anyOf ?? schema.oneOf;
  if (either !== undefined) return fc.oneof(...either.map((one) => allowed(one, name, known)));
  if (prefixItems !== undefined)
    return fc.tuple(...prefixItems.map((one) => allowed(one, name, known)));
  if (type === 'array' && items)
    return fc.array(allowed(items, name, known), { minLength: schema.minItems ?? 0, maxLength: 3 });
  if (properties !== undefined) {
    const fields = Object.entries(properties).map(([key, one]) => [key, allowed(one, key, known)]);
    return fc.record(Object.fromEntries(fields) as Record<string, Arbitrary<unknown>>, {
      requiredKeys: [...required],
    });
  }
  if (type === 'object') return anyKeys(schema, name, known);
  if (type === 'integer' || type === 'number') return numbers(schema, type === 'integer');
  if (type === 'boolean') return fc.boolean();
  if (type === 'null') return fc.constant(null);
  return texts(schema, name, known);
}

function anyKeys(
  { additionalProperties: of }: Schema,
  name: string,
  known: Known,
): Arbitrary<unknown> {
  const keys = fc.constantFrom(...Object.values(known));
  const values = typeof of === 'object' ? allowed(of, name, known) : wildValue;
  return fc.dictionary(keys, values, { maxKeys: 3 });
}

/** Small ones: a batch of sixty cards is allowed, but planning it tells no more than one of three. */
function numbers({ minimum: low = 0, maximum }: Schema, whole: boolean): Arbitrary<number> {
  const high = Math.min(maximum ?? low + 3, low + 3);
  return whole
    ? fc.integer({ min: low, max: high })
    : fc.double({ min: low, max: maximum ?? high, noNaN: true });
}

function texts({ examples }: Schema, name: string, known: Known): Arbitrary<unknown> {
  if (examples !== undefined) return fc.constantFrom(...examples);
  const id = known[name] ?? known[name.replace(/s$/, '')];
  const any = fc.constantFrom('word', 'one', ...Object.values(known));
  return id === undefined ? any : fc.oneof({ arbitrary: fc.constant(id), weight: 4 }, any);
}

/** The value with the place of that number, counted through the whole tree, replaced. */
function spoilt(value: unknown, place: number, wild: unknown): unknown {
  let left = place % count(value);
  const walk = (node: unknown): unknown => {
    if (left-- === 0) return wild;
    if (Array.isArray(node)) return node.map(walk);
    if (typeof node !== 'object' || node === null) return node;
    return Object.fromEntries(Object.entries(node).map(([key, one]) => [key, walk(one)]));
  };
  return walk(value);
}

function count(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 1;
  return Object.values(value).reduce<number>((sum, one) => sum + count(one), 1);
}
