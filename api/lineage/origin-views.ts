import type { Standing } from '../../shared/vocabulary.ts';
import type { FounderStandings } from './founder-standings.ts';
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

/** Where genes begin, by name, and how well it stands; what may not be seen is named by what stands for it, and stands unknown. */
export function originView(
  snapshot: LineageSnapshot,
  founders: FounderStandings,
  origin: FounderShare,
  names: RecordNames,
): OriginView {
  const standing = founders.of(origin);
  switch (origin.kind) {
    case 'source': {
      const source = sourceView(snapshot, origin.source, standing, names);
      return { source, standing: source.standing };
    }
    case 'individual': {
      const founder = names.ref(origin.individual);
      return { ...(founder ? { founder } : {}), standing: founder?.isPrivate ? 'unknown' : standing };
    }
    case 'unknown parent':
      return {
        unknownParentOf: { ...names.idOf('clutch', origin.clutch), title: names.clutchTitle(origin.clutch) },
        standing,
      };
  }
}

/** A source by name; one that may not be seen shows no label, and no standing. */
export function sourceView(
  { graph }: LineageSnapshot,
  source: number,
  standing: Standing,
  names: RecordNames,
): ShareSourceView {
  const { id, isPrivate } = names.idOf('source', source);
  const label = isPrivate ? null : (graph.sources[source]?.labelAsReceived ?? null);
  return { id, title: names.sourceTitle(source), standing: isPrivate ? 'unknown' : standing, label, isPrivate };
}
