import type { Dice } from './random-yard/dice.ts';

/** A JSON schema, as far as the description of the interface uses it. */
export interface Schema {
  $ref?: string;
  type?: string | string[];
  const?: unknown;
  enum?: unknown[];
  anyOf?: Schema[];
  items?: Schema;
  properties?: Record<string, Schema>;
  required?: string[];
  additionalProperties?: boolean | Schema;
  minimum?: number;
  exclusiveMinimum?: number;
  maximum?: number;
  minLength?: number;
  maxLength?: number;
  minItems?: number;
  maxItems?: number;
}

export type Schemas = Readonly<Record<string, Schema>>;

const resolved = (schema: Schema, schemas: Schemas): Schema =>
  schema.$ref === undefined ? schema : schemas[schema.$ref.slice(schema.$ref.lastIndexOf('/') + 1)]!;

const TYPES: Readonly<Record<string, (value: unknown) => boolean>> = {
  string: (value) => typeof value === 'string',
  number: (value) => typeof value === 'number',
  integer: Number.isInteger,
  boolean: (value) => typeof value === 'boolean',
  null: (value) => value === null,
  array: Array.isArray,
  object: (value) => typeof value === 'object' && value !== null && !Array.isArray(value),
};

/** Everything in which a value is not as a schema has it, each with its path; nothing of the program's own checks is used. */
export const otherThan = (schema: Schema, value: unknown, schemas: Schemas, at = '$'): string[] => {
  const { anyOf, type, items, properties, required = [], additionalProperties, ...one } = resolved(schema, schemas);
  if (anyOf)
    return anyOf.some((any) => otherThan(any, value, schemas, at).length === 0) ? [] : [`${at} is none of them`];
  const types = type === undefined ? [] : [type].flat();
  if (types.length > 0 && !types.some((one) => TYPES[one]?.(value))) return [`${at} is no ${types}`];
  if ('const' in one && one.const !== value) return [`${at} is not ${one.const}`];
  if (one.enum && !one.enum.includes(value)) return [`${at} is not one of ${one.enum}`];
  if (typeof value === 'number' && (value < (one.minimum ?? value) || value > (one.maximum ?? value)))
    return [`${at} is out of bounds`];
  if (Array.isArray(value)) return value.flatMap((entry, i) => otherThan(items ?? {}, entry, schemas, `${at}[${i}]`));
  if (typeof value !== 'object' || value === null) return [];
  const missing = required.filter((name) => !(name in value)).map((name) => `${at}.${name} is missing`);
  const inside = Object.entries(value).flatMap(([name, entry]) => {
    const known = properties?.[name];
    if (known) return otherThan(known, entry, schemas, `${at}.${name}`);
    return additionalProperties === false ? [`${at}.${name} is not described`] : [];
  });
  return [...missing, ...inside];
};

/** Words that mean something here, so that chance gets past the first check. */
export interface Known {
  dice: Dice;
  /** By the field they mean something in; '' for any other. */
  words: Readonly<Record<string, readonly string[]>>;
}

const NONSENSE = ['', 'x', '../..', '%00', "' or 1=1", '2027-02-30', 'kit:', 'ß\u0000\ud800', '9'.repeat(300)];

const anyText = ({ dice, words }: Known, field: string): string =>
  dice.pick(dice.chance(0.9) ? (words[field] ?? words['']!) : NONSENSE);

const anything = (known: Known): unknown =>
  known.dice.pick([null, 0, -1, 1e308, true, [], {}, 'x', [[]], { lines: null }, anyText(known, '')] as unknown[]);

/** A value as a schema has it, but for a slip now and then: too much, too little, another kind, or a field nobody knows. */
export const anyValue = (schema: Schema, schemas: Schemas, known: Known, field = ''): unknown => {
  const { dice } = known;
  const { anyOf, type: types, items, properties, required = [], ...one } = resolved(schema, schemas);
  const [type] = [types ?? []].flat();
  if (dice.chance(0.04)) return anything(known);
  if ('const' in one) return one.const;
  if (one.enum) return dice.pick(one.enum);
  if (anyOf) return anyValue(dice.pick(anyOf), schemas, known, field);
  if (type === 'array')
    return Array.from({ length: dice.pick([1, 1, 1, 2, 0]) }, () => anyValue(items ?? {}, schemas, known));
  if (type === 'boolean') return dice.chance(0.5);
  if (type === 'number' || type === 'integer') return dice.pick([1, 1, 1, 2, 3, 0.5, 0, -2, 1e9]);
  if (type !== 'object') return anyText(known, field);
  const kept = Object.entries(properties ?? {}).filter(([name]) => required.includes(name) || dice.chance(0.3));
  const filled = kept.map(([name, inner]) => [name, anyValue(inner, schemas, known, name)]);
  return Object.fromEntries(dice.chance(0.04) ? [...filled, ['unknown', 1]] : filled);
};
