import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { SheetAnimal, SheetClaim, SheetLabel, SheetOrigin } from '../../../shared/sheet/sheet-document.ts';
import type { Standing } from '../../../shared/vocabulary.ts';
import type { LabelView, LineageView, ShareView } from '../../lineage/lineage.view.ts';
import { percent } from '../../provenance/flag-words.ts';
import { withoutPositions } from '../../provenance/places/words-of-place.ts';
import { unit } from './sheet-ancestry.ts';
import type { AnimalFacts, PhotographFacts } from './sheet-facts.queries.ts';
import type { SheetRefs } from './sheet-refs.ts';

/** Most origins, other labels and photographs of one animal on a sheet. */
const ORIGINS_MOST = 500;
const LABELS_MOST = 200;
const PHOTOGRAPHS_MOST = 50;

/** An animal as a sheet tells it, from its record and its lineage. */
export function toSheetAnimal(
  facts: AnimalFacts,
  lineage: LineageView,
  place: Pick<SheetAnimal, 'ref' | 'clutch' | 'source'>,
  refs: SheetRefs,
  photographs: readonly PhotographFacts[],
  claims: SheetClaim[],
): SheetAnimal {
  const { expected, least, greatest, nothingKnown, bothParentsKnown } = lineage.inbreeding;
  return {
    ...place,
    number: formatRegistryNumber(facts.number),
    code: facts.code,
    species: facts.species,
    commonName: facts.commonName,
    citesAppendix: facts.citesAppendix,
    sex: facts.sex,
    sexKnownBy: facts.sexBasis,
    status: facts.status,
    hatched: facts.hatched,
    outOfWater: facts.outOfWater,
    line: withoutPositions(facts.line),
    label: toSheetLabel(lineage.label),
    inbreeding: {
      expected: unit(expected),
      least: unit(least),
      greatest: unit(greatest),
      nothingKnown,
      bothParentsKnown: unit(bothParentsKnown),
    },
    depth: lineage.depth,
    fullDepth: lineage.fullDepth,
    generationEquivalents: lineage.generationEquivalents,
    completeness: lineage.completeness && {
      generations: lineage.completeness.generations,
      index: unit(lineage.completeness.index),
    },
    filialGeneration: lineage.filialGeneration,
    origins: lineage.shares.slice(0, ORIGINS_MOST).map((share) => toSheetOrigin(share, refs)),
    claims,
    photographs: photographs.slice(0, PHOTOGRAPHS_MOST).map(({ hash, view, takenOn }) => ({
      sha256: hash,
      view,
      takenOn,
    })),
  };
}

function toSheetLabel({ name, kind, standing, shares, tracedShare, otherLabels, flags }: LabelView): SheetLabel {
  return {
    name: withoutPositions(name),
    kind,
    standing,
    inWords: standingInWords(shares),
    shares: shares.map((share) => ({ standing: share.standing, share: unit(share.share) })),
    tracedShare: { expected: unit(tracedShare.expected), least: unit(tracedShare.least) },
    otherLabels: otherLabels
      .slice(0, LABELS_MOST)
      .map(({ label, share }) => ({ label: withoutPositions(label), share: unit(share) })),
    flags: flags.map(({ code, severity, acknowledged }) => ({ code, severity, acknowledged: acknowledged !== null })),
  };
}

/** Shares by standing in words: "62.5 % documented · 25 % stated · 12.5 % unknown". */
export function standingInWords(shares: readonly { readonly standing: Standing; readonly share: number }[]): string {
  return shares
    .map(({ standing, share }) => `${percent(share)} ${standing === 'by-looks' ? 'by looks' : standing}`)
    .join(' · ');
}

function toSheetOrigin({ source, founder, standing, share }: ShareView, refs: SheetRefs): SheetOrigin {
  const ref = source ? refs.known('s', source.id) : founder ? refs.known('a', founder.id) : null;
  const kind = source ? 'source' : founder ? 'founder' : 'unknown-parent';
  return { kind, ref, standing, share: unit(share) };
}
