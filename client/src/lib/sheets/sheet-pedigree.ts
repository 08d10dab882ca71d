import { dateBounds } from '$shared/edtf.ts';
import type {
  SheetAncestor,
  SheetAnimal,
  SheetClutch,
  SheetDocument,
  SheetSource,
} from '$shared/sheet/sheet-document.ts';
import type { Standing } from '$shared/vocabulary.ts';
import type { PedigreeEdge, PedigreeNode, PedigreeView } from '../charts/ancestors/pedigree-view.ts';
import { word } from '../words/word.ts';

/** The ancestors of an animal as a sheet tells them, for the chart. */
export function pedigreeOfSheet(sheet: SheetDocument, root: string): PedigreeView {
  const animals = new Map([...sheet.animals, ...sheet.ancestors].map((animal) => [animal.ref, animal]));
  const clutches = new Map(sheet.clutches.map((clutch) => [clutch.ref, clutch]));
  const sources = new Map(sheet.sources.map((source) => [source.ref, source]));
  const nodes = new Map<string, PedigreeNode>();
  const edges: PedigreeEdge[] = [];
  const waiting = [root];
  for (let ref = waiting.pop(); ref !== undefined; ref = waiting.pop()) {
    const animal = animals.get(ref);
    if (!animal || nodes.has(ref)) continue;
    nodes.set(ref, animalNode(animal));
    const clutch = clutches.get(animal.clutch ?? '');
    const source = sources.get(animal.source ?? '');
    if (clutch) {
      edges.push({ from: clutch.ref, to: ref, kind: 'young' });
      if (nodes.has(clutch.ref)) continue;
      nodes.set(clutch.ref, clutchNode(clutch));
      for (const { animal: parent, as, probability } of clutch.parents) {
        edges.push({ from: parent, to: clutch.ref, kind: 'parent', role: as, probability });
        waiting.push(parent);
      }
    } else if (source) {
      nodes.set(source.ref, sourceNode(source));
      edges.push({ from: source.ref, to: ref, kind: 'founder' });
    }
  }
  return { root, nodes: [...nodes.values()], edges, truncated: false };
}

function boundsOf(date: string | null): { earliest: string | null; latest: string | null } {
  return (date === null ? null : dateBounds(date)) ?? { earliest: null, latest: null };
}

function animalNode(animal: SheetAnimal | SheetAncestor): PedigreeNode {
  const isSold = 'status' in animal;
  return {
    kind: 'individual',
    id: animal.ref,
    number: animal.number,
    isPrivate: !isSold && animal.isPrivate,
    code: isSold ? animal.code : null,
    sex: animal.sex ?? 'unsexed',
    status: isSold ? animal.status : 'unknown',
    hatched: animal.hatched,
    ...boundsOf(animal.hatched),
    line: animal.line,
    species: animal.species,
    unknownOrigin: animal.clutch === null && animal.source === null && (isSold || !animal.hasMoreAncestors),
    hasMoreAncestors: !isSold && animal.hasMoreAncestors,
    standings: isSold ? animal.label.shares : animal.standings,
    inbreeding: isSold ? animal.inbreeding.expected : null,
  };
}

function clutchNode({ ref, laid, pairs, unknownSire, unknownDam }: SheetClutch): PedigreeNode {
  const title = laid === null ? word('clutch') : `clutch laid ${laid}`;
  return { kind: 'clutch', id: ref, title, laid, ...boundsOf(laid), pairs, unknownSire, unknownDam };
}

function sourceNode({ ref, title, kind, labelAsReceived, date, baseKinship, claims }: SheetSource): PedigreeNode {
  const standing: Standing = claims[0]?.standing ?? 'unknown';
  const source = { id: ref, title, sourceKind: kind ?? 'unknown', label: labelAsReceived, date, standing } as const;
  return { kind: 'source', ...source, ...boundsOf(date), baseKinship: baseKinship ?? 0 };
}
