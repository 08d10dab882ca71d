import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import type { SheetAnimal, SheetClaim, SheetDocument, SheetSource } from '../../../shared/sheet/sheet-document.ts';
import { IndividualLineageService } from '../../lineage/individual-lineage.service.ts';
import type { LineageView } from '../../lineage/lineage.view.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { Snapshots } from '../../lineage/snapshots.service.ts';
import { Problem } from '../../platform/problem.ts';
import { findClaimsAbout } from '../../provenance/claims/claim.queries.ts';
import type { ClaimView } from '../../provenance/claims/claim.view.ts';
import { withoutPositions } from '../../provenance/places/words-of-place.ts';
import { privateSource } from '../../register/private-records.ts';
import { sourceTitle } from '../../register/titles.ts';
import { asPublished } from './as-published.ts';
import { toSheetAnimal } from './sheet-animal.ts';
import { SheetAncestry, unit } from './sheet-ancestry.ts';
import {
  readAnimalFacts,
  readPhotographFacts,
  readSourceFacts,
  type PhotographFacts,
  type SourceFacts,
} from './sheet-facts.queries.ts';
import { SheetRefs } from './sheet-refs.ts';
import { say } from '../../platform/say.ts';

/** Most claims that a sheet tells of one record, and reads for one sheet. */
const CLAIMS_OF_ONE = 50;
const CLAIMS_MOST = 2000;
/** How often a register that changes meanwhile is read again. */
const ATTEMPTS = 4;

/** What the register says of some animals, as a sheet tells it. */
export interface Composed extends Pick<SheetDocument, 'animals' | 'ancestors' | 'clutches' | 'sources'> {
  /** The ids behind its references. */
  readonly records: Readonly<Record<string, string>>;
}

/** Says of animals what a sheet says of them. */
@Injectable()
export class SheetComposer {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(IndividualLineageService) private readonly lineage: IndividualLineageService,
  ) {}

  /**
   * What a sheet of these animals, which every member may see, says at this moment, all of it from one state of the lineage. 422 where their
   * ancestors are too many, 503 while their figures are being recomputed.
   */
  async compose(ids: readonly string[], { photographs }: { photographs: boolean }): Promise<Composed> {
    return asPublished(async () => {
      for (let attempt = 1; attempt <= ATTEMPTS; attempt++) {
        const snapshot = await this.snapshots.current();
        const lineages: LineageView[] = [];
        for (const id of ids) lineages.push(await this.lineage.get(id));
        const isOne = lineages.every(({ current, asOf }) => current && asOf.revision === snapshot.asOf.revision);
        if (isOne) return this.#compose(snapshot, ids, lineages, photographs);
      }
      throw new Problem(
        'unavailable',
        503,
        say`Not at this moment`,
        say`The figures of these animals are being computed anew. Try again in a moment.`,
      );
    });
  }

  async #compose(
    snapshot: LineageSnapshot,
    ids: readonly string[],
    lineages: readonly LineageView[],
    photographs: boolean,
  ): Promise<Composed> {
    const { manager } = this.dataSource;
    const refs = new SheetRefs();
    const roots = ids.map((id) => snapshot.find(id));
    for (const id of ids) refs.animal(id);
    const ancestry = await SheetAncestry.read(manager, snapshot, roots, refs);
    const ancestors = ancestry.ancestors(new Set(roots));
    const clutches = ancestry.clutches();
    for (const source of ancestry.sources) refs.source(snapshot.graph.sources[source]?.id ?? '');
    for (const { shares } of lineages)
      for (const { source } of shares) if (source && !source.isPrivate) refs.source(source.id);
    const [facts, pictures, sources, claims] = await Promise.all([
      readAnimalFacts(manager, ids),
      photographs ? readPhotographFacts(manager, ids) : [],
      readSourceFacts(manager, refs.sources()),
      claimsOf(manager, ids, refs.sources()),
    ]);
    const animals = ids.map((id, place): SheetAnimal => {
      const [fact, lineage, root] = [facts.find((one) => one.id === id), lineages[place], roots[place] ?? -1];
      if (!fact || !lineage) throw new Error('an animal that was there a moment ago is gone');
      const at = { ref: refs.animal(id), clutch: ancestry.clutchOf(root), source: ancestry.sourceOf(root) };
      const taken = pictures.filter(({ individualId }: PhotographFacts) => individualId === id);
      return toSheetAnimal(fact, lineage, at, refs, taken, claims.get(id) ?? []);
    });
    return {
      animals,
      ancestors,
      clutches,
      sources: refs.sources().map((id) => toSheetSource(id, refs, sources, claims)),
      records: refs.records(),
    };
  }
}

type Claims = ReadonlyMap<string, SheetClaim[]>;

/** What is claimed of animals and sources, by their ids; the oldest first. */
async function claimsOf(
  manager: EntityManager,
  individualIds: readonly string[],
  sourceIds: readonly string[],
): Promise<Claims> {
  const claims = new Map<string, SheetClaim[]>();
  for (const claim of await findClaimsAbout(manager, { individualIds, sourceIds }, CLAIMS_MOST)) {
    const about = claim.sourceId ?? claim.individualId ?? '';
    const known = claims.get(about) ?? [];
    if (known.length < CLAIMS_OF_ONE) claims.set(about, [...known, toSheetClaim(claim)]);
  }
  return claims;
}

function toSheetClaim({ aspect, value, standing }: ClaimView): SheetClaim {
  return { aspect, value: withoutPositions(value), standing: standing.standing, because: standing.because };
}

/** A source; of a private one only that it is there. */
function toSheetSource(id: string, refs: SheetRefs, facts: readonly SourceFacts[], claims: Claims): SheetSource {
  const found = facts.find((one) => one.id === id);
  const ref = refs.source(id);
  if (!found)
    return {
      ref,
      isPrivate: true,
      title: privateSource,
      kind: null,
      date: null,
      countryOfExport: null,
      labelAsReceived: null,
      permitReferences: [],
      baseKinship: null,
      claims: [],
    };
  return {
    ref,
    isPrivate: false,
    title: sourceTitle(found),
    kind: found.kind,
    date: found.date,
    countryOfExport: found.countryOfExport,
    labelAsReceived: withoutPositions(found.labelAsReceived),
    permitReferences: [...found.permitReferences],
    baseKinship: unit(found.baseKinship),
    claims: claims.get(id) ?? [],
  };
}
