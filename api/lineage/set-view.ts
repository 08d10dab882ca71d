import type { AncestorContribution } from './kernel/effective-ancestors.ts';
import type { EffectiveSize } from './kernel/effective-size.ts';
import type { AncestorContributionView, LineageSetView, SetEffectiveSizeView } from './lineage-set.view.ts';
import type { FounderStandings } from './founder-standings.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import { originView } from './origin-views.ts';
import type { RecordNames } from './record-names.ts';
import type { SetAnimals } from './set-animals.ts';
import { setCautions } from './set-cautions.ts';
import { setStandings } from './set-standings.ts';
import type { SetMeasuresResult } from './tasks/set-measures.task.ts';
import { say } from '../platform/say.ts';

/** The measures of a set as an answer shows them. */
export function setView(
  snapshot: LineageSnapshot,
  { depth, isCurrent }: SetAnimals,
  founders: FounderStandings,
  measures: SetMeasuresResult,
  names: RecordNames,
): LineageSetView {
  const { animals, inbreeding, diversity, contributions, ancestors, years } = measures;
  const named = contributions.reduce((sum, { share }) => sum + share, 0);
  const others = measures.originCount - contributions.length;
  const dated = years.reduce((sum, year) => sum + year.animals, 0);
  return {
    animals,
    nothingKnown: animals - inbreeding.animals,
    inbreeding,
    meanKinship: diversity?.meanKinship ?? null,
    geneDiversity: diversity?.geneDiversity ?? null,
    founderGenomeEquivalents: diversity?.founderGenomeEquivalents ?? null,
    effectiveFounders: measures.effectiveFounders,
    effectiveAncestors: {
      effective: ancestors.effective,
      items: ancestors.contributions.map((one) => ancestorView(one, names)),
      picked: measures.ancestorCount,
      unexplained: ancestors.unexplained,
    },
    contributions: {
      items: contributions.map((origin) => ({ ...originView(snapshot, founders, origin, names), share: origin.share })),
      standings: setStandings(snapshot, founders, measures.sourceShares, animals),
      others,
      othersShare: others === 0 ? 0 : Math.max(0, 1 - named),
    },
    effectiveSize: sizeView(measures.effectiveSize),
    depth,
    years: years.map(({ diversity: ofYear, shares, ...year }) => ({
      ...year,
      geneDiversity: ofYear.geneDiversity,
      shares: [...shares],
    })),
    undated: animals - dated,
    cautions: setCautions(measures, depth),
    current: isCurrent,
    asOf: snapshot.asOf,
  };
}

function ancestorView(one: AncestorContribution, names: RecordNames): AncestorContributionView {
  if (one.kind === 'unknown parent')
    return {
      unknownParentOf: { ...names.idOf('clutch', one.clutch), title: names.clutchTitle(one.clutch) },
      share: one.share,
    };
  return { ancestor: names.refOf(one.individual), share: one.share };
}

function sizeView(size: EffectiveSize): SetEffectiveSizeView {
  return { ...size, note: noteOn(size) };
}

function noteOn({ animals, effectiveSize }: EffectiveSize): string | null {
  if (effectiveSize !== null) return null;
  if (animals === 0)
    return say`No animal of the set has more than one complete generation on record, so no increase can be told.`;
  return say`No inbreeding is recorded, so no increase can be told. The effective size is undefined, not infinite.`;
}
