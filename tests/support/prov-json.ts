import { isDeepStrictEqual } from 'node:util';

/**
 * What PROV-JSON (W3C Member Submission, 24 April 2013, sections 2 and 3, and its JSON schema) asks of each relation: attributes that must be there, and
 * those of PROV that may. Every other attribute has a name with a prefix and a literal. In our own words, since the published schema
 * does not look at prefixes and references.
 */
const relations: Readonly<Record<string, { must: readonly string[]; may: readonly string[] }>> = {
  wasGeneratedBy: { must: ['prov:entity'], may: ['prov:activity', 'prov:time'] },
  used: { must: ['prov:activity'], may: ['prov:entity', 'prov:time'] },
  wasDerivedFrom: {
    must: ['prov:generatedEntity', 'prov:usedEntity'],
    may: ['prov:activity', 'prov:generation', 'prov:usage'],
  },
  wasAttributedTo: { must: ['prov:entity', 'prov:agent'], may: [] },
  wasAssociatedWith: { must: ['prov:activity'], may: ['prov:agent', 'prov:plan'] },
  wasInfluencedBy: { must: ['prov:influencer', 'prov:influencee'], may: [] },
};

/** Which of the three kinds an attribute of a relation refers to (PROV-DM, 30 April 2013, section 5). */
const refersTo: Readonly<Record<string, readonly string[]>> = {
  'prov:entity': ['entity'],
  'prov:generatedEntity': ['entity'],
  'prov:usedEntity': ['entity'],
  'prov:activity': ['activity'],
  'prov:agent': ['agent'],
  'prov:influencer': ['entity', 'activity', 'agent'],
  'prov:influencee': ['entity', 'activity', 'agent'],
};

const things = ['entity', 'activity', 'agent'];
const instant = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)$/;
const commonOf = ['prov:type', 'prov:label', 'prov:value', 'prov:location', 'prov:role'];

type Attributes = Readonly<Record<string, unknown>>;
export type ProvJson = Readonly<Record<string, Readonly<Record<string, Attributes>>>>;

/** Everything that is wrong with a document by PROV-JSON and by the constraints of PROV (PROV-CONSTRAINTS, 30 April 2013); empty where nothing is. */
export function faultsOf(document: ProvJson): string[] {
  const faults: string[] = [];
  const prefixes = ['prov', 'xsd', ...Object.keys(document['prefix'] ?? {})];
  const isName = (text: unknown): boolean =>
    typeof text === 'string' && prefixes.includes(text.split(':')[0] ?? '') && /^[\w-]+:[\w.~-]+$/.test(text);
  const declared = (kind: string, name: unknown): boolean => Object.hasOwn(document[kind] ?? {}, String(name));
  for (const [kind, statements] of Object.entries(document)) {
    if (kind === 'prefix') continue;
    if (!things.includes(kind) && !relations[kind]) faults.push(`${kind} is no statement`);
    for (const [name, attributes] of Object.entries(statements)) {
      const where = `${kind} ${name}`;
      if (!(things.includes(kind) ? isName(name) : /^_:\w+$/.test(name))) faults.push(`${where}: no name`);
      for (const must of relations[kind]?.must ?? [])
        if (!(must in attributes)) faults.push(`${where}: ${must} is missing`);
      for (const [attribute, value] of Object.entries(attributes))
        faults.push(
          ...faultsOfAttribute(kind, attribute, value, isName, declared).map((fault) => `${where}: ${fault}`),
        );
    }
  }
  return [...faults, ...faultsOfConstraints(document)];
}

function faultsOfAttribute(
  kind: string,
  attribute: string,
  value: unknown,
  isName: (text: unknown) => boolean,
  declared: (kind: string, name: unknown) => boolean,
): string[] {
  if (!isName(attribute)) return [`${attribute} has no known prefix`];
  const isTime = ['prov:time', 'prov:startTime', 'prov:endTime'].includes(attribute);
  if (isTime) return instant.test(String(value)) ? [] : [`${attribute} is no xsd:dateTime`];
  const relation = relations[kind];
  if (relation && [...relation.must, ...relation.may].includes(attribute))
    return (refersTo[attribute] ?? []).some((thing) => declared(thing, value)) ? [] : [`${attribute} names nothing`];
  if (attribute.startsWith('prov:') && !commonOf.includes(attribute)) return [`${attribute} does not belong here`];
  return isLiteral(value, isName) ? [] : [`${attribute} is no literal`];
}

function isLiteral(value: unknown, isName: (text: unknown) => boolean): boolean {
  if (['string', 'number', 'boolean'].includes(typeof value)) return true;
  if (typeof value !== 'object' || value === null) return false;
  const literal = value as { $?: unknown; type?: unknown };
  if (!isDeepStrictEqual(Object.keys(literal).sort(), ['$', 'type']) || !isName(literal.type)) return false;
  return literal.type === 'prov:QUALIFIED_NAME' ? isName(literal.$) : typeof literal.$ === 'string';
}

/** Entities and activities are disjoint (constraint 55); nothing begins after its end (30); a thing does not come out of itself (41, 52). */
function faultsOfConstraints(document: ProvJson): string[] {
  const { entity = {}, activity = {}, wasDerivedFrom = {} } = document;
  const both = Object.keys(entity).filter((name) => name in activity);
  const backwards = Object.entries(activity).filter(
    ([, { 'prov:startTime': start, 'prov:endTime': end }]) =>
      typeof start === 'string' && typeof end === 'string' && start > end,
  );
  const faults = [
    ...both.map((name) => `${name} is both`),
    ...backwards.map(([name]) => `${name} ends before it begins`),
  ];
  const from = new Map<string, string[]>();
  for (const { 'prov:generatedEntity': made, 'prov:usedEntity': used } of Object.values(wasDerivedFrom))
    from.set(String(made), [...(from.get(String(made)) ?? []), String(used)]);
  const done = new Set<string>();
  const visit = (name: string, path: readonly string[]): void => {
    if (path.includes(name)) faults.push(`${name} comes out of itself`);
    else if (!done.has(name)) for (const used of from.get(name) ?? []) visit(used, [...path, name]);
    done.add(name);
  };
  for (const name of from.keys()) visit(name, []);
  return faults;
}
