import { stringify } from 'yaml';
import type { Path } from './document.js';
import { auditJsonSchema } from './schema.js';

interface JsonSchema {
  $ref?: string;
  allOf?: readonly JsonSchema[];
  anyOf?: readonly JsonSchema[];
  properties?: Readonly<Record<string, JsonSchema>>;
  items?: JsonSchema | readonly JsonSchema[];
  additionalProperties?: JsonSchema | boolean;
  definitions?: Readonly<Record<string, JsonSchema>>;
  description?: string;
  examples?: readonly unknown[];
}

/** What the schema says of one place of audit.yaml. */
export interface Described {
  /** Keys known there, in alphabetical order. */
  known: readonly string[];
  meaning: string | undefined;
  /** As it would be written: `days: [21, 45]`. */
  example: string | undefined;
}

let whole: JsonSchema | undefined;

/** The schema's JSON form, made once: it never changes while the program runs. */
function schema(): JsonSchema {
  whole ??= auditJsonSchema() as JsonSchema;
  return whole;
}

/** A schema and all that it refers to or offers as an alternative. */
function alternatives(one: JsonSchema): readonly JsonSchema[] {
  const referred = one.$ref && schema().definitions?.[one.$ref.replace('#/definitions/', '')];
  const inner = [...(referred ? [referred] : []), ...(one.allOf ?? []), ...(one.anyOf ?? [])];
  return [one, ...inner.flatMap(alternatives)];
}

function under(one: JsonSchema, step: PropertyKey): readonly JsonSchema[] {
  const own = one.properties && Object.hasOwn(one.properties, step) ? one.properties[String(step)] : undefined;
  if (own) return [own];
  if (typeof step === 'number') return one.items ? [one.items].flat() : [];
  return typeof one.additionalProperties === 'object' ? [one.additionalProperties] : [];
}

function at(path: Path): readonly JsonSchema[] {
  return path.reduce<readonly JsonSchema[]>(
    (found, step) => found.flatMap((one) => under(one, step)).flatMap(alternatives),
    alternatives(schema()),
  );
}

function exampleText(key: PropertyKey | undefined, value: unknown): string {
  const named = typeof key === 'string' ? { [key]: value } : value;
  const written = stringify(named, { collectionStyle: 'flow', flowCollectionPadding: true, lineWidth: 0 }).trim();
  return typeof key === 'string' ? written.replace(/^\{ ?/, '').replace(/ ?\}$/, '') : written;
}

/** What the schema says of the place at this path: known keys, meaning, an example. */
export function described(path: Path): Described {
  const found = at(path);
  const known = found.flatMap((one) => Object.keys(one.properties ?? {}));
  const example = found.find((one) => one.examples)?.examples?.[0];
  return {
    known: [...new Set(known)].sort(),
    meaning: found.find((one) => one.description)?.description,
    example: example === undefined ? undefined : exampleText(path.at(-1), example),
  };
}

/** Top-level sections that know a key of this name. */
export function sectionsWith(key: string): readonly string[] {
  const sections = Object.keys(schema().properties ?? {});
  return sections.filter((name) => at([name]).some((one) => one.properties && Object.hasOwn(one.properties, key)));
}
