import { standingOfSource } from '../provenance/standing.ts';
import type { FounderShare } from './kernel/shares.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import type { OriginView } from './lineage.view.ts';
import type { RecordNames, WantedNames } from './record-names.ts';

/** Asks for the names of where genes begin. */
export function wantOrigins(wanted: WantedNames, origins: readonly FounderShare[]): void {
  for (const origin of origins)
    if (origin.kind === 'source') wanted.sources.add(origin.source);
    else if (origin.kind === 'individual') wanted.individuals.add(origin.individual);
    else wanted.clutches.add(origin.clutch);
}

/** Where genes begin, by name; what may not be seen is named by what stands for it. */
export function originView({ graph }: LineageSnapshot, origin: FounderShare, names: RecordNames): OriginView {
  switch (origin.kind) {
    case 'source': {
      const { id, isPrivate } = names.idOf('source', origin.source);
      const label = isPrivate ? null : (graph.sources[origin.source]?.labelAsReceived ?? null);
      const standing = standingOfSource({ labelAsReceived: label });
      return { source: { id, title: names.sourceTitle(origin.source), standing, label, isPrivate } };
    }
    case 'individual': {
      const founder = names.ref(origin.individual);
      return founder ? { founder } : {};
    }
    case 'unknown parent':
      return { unknownParentOf: { ...names.idOf('clutch', origin.clutch), title: names.clutchTitle(origin.clutch) } };
  }
}
