import type { ClutchNodeView, IndividualNodeView, PedigreeView, SourceNodeView } from '../pedigree.view.ts';
import { double, typed, type ProvStatements } from './prov-document.ts';

/** The name of a record in the document: private ones are numbered within it. */
export function nameOf({ id, isPrivate }: { readonly id: string; readonly isPrivate: boolean }): string {
  return isPrivate ? `concealed:${id}` : `record:${id}`;
}

/** Begin and end of what happened on a day that is known exactly. */
const during = (node: { readonly earliest: string | null; readonly latest: string | null }): Record<string, string> =>
  node.earliest !== null && node.earliest === node.latest
    ? { 'prov:startTime': `${node.earliest}T00:00:00Z`, 'prov:endTime': `${node.earliest}T23:59:59Z` }
    : {};

/** Says of every animal, clutch and source of a chart what it came out of: one derivation for each candidate parent, with its probability. */
export function tellChart(statements: ProvStatements, { nodes, edges }: PedigreeView): void {
  const names = new Map(nodes.map((node) => [node.id, nameOf(node)]));
  const young = new Set(edges.filter(({ kind }) => kind === 'young').map(({ to }) => to));
  for (const node of nodes)
    if (node.kind === 'individual') tellAnimal(statements, node, young.has(node.id));
    else if (node.kind === 'clutch') tellClutch(statements, node);
    else tellSource(statements, node);
  for (const { from, to, kind, role, probability } of edges) {
    const [used, made] = [names.get(from) ?? '', names.get(to) ?? ''];
    if (kind === 'young') {
      const activity = activityOf('hatching', made);
      statements.add('activity', activity, { 'prov:type': typed('lk:Hatching') });
      statements.relate('used', { 'prov:activity': activity, 'prov:entity': used });
      statements.relate('wasGeneratedBy', { 'prov:entity': made, 'prov:activity': activity });
    }
    statements.relate('wasDerivedFrom', {
      'prov:generatedEntity': made,
      'prov:usedEntity': used,
      'prov:type': typed({ parent: 'lk:Parentage', young: 'lk:Hatching', founder: 'lk:Founding' }[kind]),
      'lk:role': role ?? null,
      'lk:probability': probability === undefined ? null : double(probability),
    });
  }
}

const activityOf = (what: string, name: string): string => `activity:${what}-${name.replace(/^\w+:/, '')}`;

function tellAnimal(statements: ProvStatements, node: IndividualNodeView, isYoung: boolean): void {
  const name = nameOf(node);
  if (node.isPrivate) {
    statements.add('entity', name, { 'prov:type': typed('lk:Animal'), 'prov:label': 'a private animal' });
    return;
  }
  statements.add('entity', name, {
    'prov:type': typed('lk:Animal'),
    'prov:label': node.code ?? node.number,
    'lk:registryNumber': node.number,
    'lk:sex': node.sex,
    'lk:status': node.status,
    'lk:hatched': node.hatched,
    'lk:line': node.line,
    'dwc:scientificName': node.species,
  });
  if (node.hatched === null) return;
  const when = during(node);
  statements.add('activity', activityOf('hatching', name), {
    'prov:type': typed('lk:Hatching'),
    'lk:date': node.hatched,
    ...when,
  });
  if (!isYoung)
    statements.relate('wasGeneratedBy', { 'prov:entity': name, 'prov:activity': activityOf('hatching', name) });
}

function tellClutch(statements: ProvStatements, node: ClutchNodeView): void {
  const [name, activity] = [nameOf(node), activityOf('laying', nameOf(node))];
  statements.add('entity', name, {
    'prov:type': typed('lk:Clutch'),
    'prov:label': node.title,
    'lk:laid': node.laid,
    'lk:unknownSire': node.unknownSire > 0 ? double(node.unknownSire) : null,
    'lk:unknownDam': node.unknownDam > 0 ? double(node.unknownDam) : null,
  });
  statements.add('activity', activity, { 'prov:type': typed('lk:Laying'), 'lk:date': node.laid, ...during(node) });
  statements.relate('wasGeneratedBy', { 'prov:entity': name, 'prov:activity': activity });
}

function tellSource(statements: ProvStatements, node: SourceNodeView): void {
  const [name, activity] = [nameOf(node), activityOf('arrival', nameOf(node))];
  statements.add('entity', name, {
    'prov:type': typed('lk:Source'),
    'prov:label': node.title,
    'lk:labelAsReceived': node.label,
  });
  if (node.isPrivate) return;
  const types = {
    import: 'lk:Import',
    'wild-collection': 'lk:WildCollection',
    purchase: 'lk:Purchase',
    unknown: 'lk:Arrival',
  };
  statements.add('activity', activity, {
    'prov:type': typed(types[node.sourceKind]),
    'lk:date': node.date,
    ...during(node),
  });
  statements.relate('wasGeneratedBy', { 'prov:entity': name, 'prov:activity': activity });
}
