import { standingOfSource } from '../provenance/standing.ts';
import type { FounderShare } from './kernel/shares.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import type { OriginView, ShareSourceView } from './lineage.view.ts';
import type { RecordNames, WantedNames } from './record-names.ts';

/** Asks for the names of where genes begin. */
export function wantOrigins(wanted: WantedNames, origins: readonly FounderShare[]): void {
  for (const origin of origins)
    if (origin.kind === 'source') wanted.sources.add(origin.source);
    else if (origin.kind === 'individual') wanted.individuals.add(origin.individual);
    else wanted.clutches.add(origin.clutch);
}

/** Where genes begin, by name; what may not be seen is named by what stands for it. */
export function originView(snapshot: LineageSnapshot, origin: FounderShare, names: RecordNames): OriginView {
  switch (origin.kind) {
    case 'source':
      return { source: sourceView(snapshot, origin.source, names) };
    case 'individual': {
      const founder = names.ref(origin.individual);
      return founder ? { founder } : {};
    }
    case 'unknown parent':
      return { unknownParentOf: { ...names.idOf('clutch', origin.clutch), title: names.clutchTitle(origin.clutch) } };
  }
}

/** A source by name; one that may not be seen shows no label. */
export function sourceView({ graph }: LineageSnapshot, source: number, names: RecordNames): ShareSourceView {
  const { id, isPrivate } = names.idOf('source', source);
  const label = isPrivate ? null : (graph.sources[source]?.labelAsReceived ?? null);
  return {
    id,
    title: names.sourceTitle(source),
    standing: standingOfSource({ labelAsReceived: label }),
    label,
    isPrivate,
  };
}
