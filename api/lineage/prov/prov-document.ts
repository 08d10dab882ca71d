/** A value of PROV-JSON: a plain literal, or one with a type. */
export type ProvValue = string | number | { readonly $: string; readonly type: string };
export type ProvAttributes = Record<string, ProvValue | ProvValue[]>;

/** The kinds of statement that are made here, as PROV-JSON names them. */
export const provStatements = [
  'entity',
  'activity',
  'agent',
  'wasGeneratedBy',
  'used',
  'wasDerivedFrom',
  'wasAttributedTo',
  'wasAssociatedWith',
  'wasInfluencedBy',
] as const;
type Statement = (typeof provStatements)[number];
type Relation = Exclude<Statement, 'entity' | 'activity' | 'agent'>;

/** A document of PROV-JSON (W3C Member Submission of 24 April 2013). */
export type ProvDocument = { readonly prefix: Readonly<Record<string, string>> } & Partial<
  Record<Statement, Readonly<Record<string, ProvAttributes>>>
>;

/** What the prefixes of a document stand for; `prov` and `xsd` are known to every reader. */
const prefix = {
  lk: 'urn:x-linekeeper:terms:',
  record: 'urn:uuid:',
  activity: 'urn:x-linekeeper:activity:',
  concealed: 'urn:x-linekeeper:concealed:',
  party: 'urn:x-linekeeper:party:',
  dwc: 'http://rs.tdwg.org/dwc/terms/',
} as const;

/** A name in the document; what it names is one of these kinds of type. */
export const typed = ($: string): ProvValue => ({ $, type: 'prov:QUALIFIED_NAME' });
/** A number as a double, exactly. */
export const double = (value: number): ProvValue => ({ $: String(value), type: 'xsd:double' });

/** Gathers statements; each thing once, relations numbered in the order in which they are made. */
export class ProvStatements {
  readonly #statements: Partial<Record<Statement, Record<string, ProvAttributes>>> = {};
  #relations = 0;

  /** Adds a thing; what is not known (null) is left out. */
  add(kind: 'entity' | 'activity' | 'agent', name: string, attributes: Record<string, ProvValue | null>): void {
    const known = Object.entries(attributes).filter((entry): entry is [string, ProvValue] => entry[1] !== null);
    (this.#statements[kind] ??= {})[name] ??= Object.fromEntries(known);
  }

  /** Adds a statement about two things. */
  relate(kind: Relation, attributes: Record<string, ProvValue | null>): void {
    const known = Object.entries(attributes).filter((entry): entry is [string, ProvValue] => entry[1] !== null);
    (this.#statements[kind] ??= {})[`_:r${++this.#relations}`] = Object.fromEntries(known);
  }

  get document(): ProvDocument {
    return { prefix, ...this.#statements };
  }
}
