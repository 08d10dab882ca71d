import type { EntityManager } from 'typeorm';
import { dateBounds, type DateBounds } from '../../../shared/edtf.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import type { RecordNames } from '../../lineage/record-names.ts';
import { sexOf } from '../../lineage/register-graph.ts';
import type { IndividualName } from '../../lineage/record-names.queries.ts';
import { readProven } from '../../register/individuals/individual-details.queries.ts';
import { spanBetween, type Span } from '../../register/warnings/spans.ts';
import type { AgeView } from '../breeder.view.ts';
import type { Breeder, ExcludedAnimal } from '../breeders.ts';
import { exclusionWords } from '../mates/exclusion-words.ts';
import { readKeeperNames } from '../mates/keeper-names.queries.ts';
import { readKeepersOf } from './carriers.queries.ts';
import type { CarrierView } from './carrier.view.ts';
import type { Carrier } from './descendants.ts';
import { say } from '../../platform/say.ts';

/** Living animals, and what speaks against breeding from them; private ones are in neither list. */
export interface Judged {
  readonly breeders: readonly Breeder[];
  readonly excluded: readonly ExcludedAnimal[];
}

interface Known {
  readonly keeperIds: ReadonlyMap<string, string>;
  readonly keepers: ReadonlyMap<string, string>;
  readonly proven: ReadonlySet<string>;
}

/** Tells who carries something: where it is, how old, whether it has bred and may. */
export class CarrierTeller {
  readonly #breeders: ReadonlyMap<number, Breeder>;
  readonly #excluded: ReadonlyMap<number, ExcludedAnimal>;

  private constructor(
    private readonly snapshot: LineageSnapshot,
    private readonly names: RecordNames,
    { breeders, excluded }: Judged,
    private readonly known: Known,
  ) {
    this.#breeders = new Map(breeders.map((one) => [one.animal, one]));
    this.#excluded = new Map(excluded.map((one) => [one.animal, one]));
  }

  /** @param animals those that will be told; their names must be read already */
  static async read(
    manager: EntityManager,
    snapshot: LineageSnapshot,
    names: RecordNames,
    judged: Judged,
    animals: readonly number[],
  ): Promise<CarrierTeller> {
    const ids = [...new Set(animals)].map((animal) => snapshot.idOf(animal));
    const [keeperIds, proven] = await Promise.all([readKeepersOf(manager, ids), readProven(manager, ids)]);
    const keepers = await readKeeperNames(manager, [...new Set(keeperIds.values())]);
    return new CarrierTeller(snapshot, names, judged, { keeperIds, keepers, proven });
  }

  tell({ animal, expected, least }: Carrier): CarrierView {
    const ref = this.names.refOf(animal);
    const share = { expected, least };
    const nothing = { line: null, keeper: null, keeperId: null, age: null, proven: null };
    if (ref.isPrivate) return { animal: ref, ...nothing, share, mayBreed: true, warnings: [] };
    const { graph } = this.snapshot;
    const line = graph.lines[graph.lineOf[animal] ?? -1];
    const id = this.snapshot.idOf(animal);
    const keeperId = this.known.keeperIds.get(id) ?? null;
    return {
      animal: ref,
      line: line ? { id: line.id, name: line.name } : null,
      keeper: keeperId === null ? null : (this.known.keepers.get(keeperId) ?? null),
      keeperId,
      age: ageView(spanBetween(hatchedOf(this.names.individual(animal)), today(), 'months')),
      proven: this.known.proven.has(id),
      share,
      mayBreed: !this.#excluded.has(animal),
      warnings: this.#warningsFor(animal),
    };
  }

  #warningsFor(animal: number): string[] {
    const excluded = this.#excluded.get(animal);
    if (excluded) return [ownWords[excluded.reason] ?? exclusionWords[excluded.reason]];
    const breeder = this.#breeders.get(animal);
    return breedingWarnings(breeder, sexOf(this.snapshot.graph, animal) === 'unsexed');
  }
}

/** An age as an answer tells it. */
export function ageView(age: Span | null): AgeView | null {
  return age && { least: age.least === null ? null : Math.max(0, age.least), greatest: age.greatest };
}

const today = (): DateBounds | null => dateBounds(new Date().toISOString().slice(0, 10));

/** The bounds of the hatching date that a name tells; null without one. */
export function hatchedOf(name: IndividualName | undefined): DateBounds | null {
  if (!name?.hatched) return null;
  return { earliest: day(name.hatched_earliest), latest: day(name.hatched_latest) };
}

const day = (text: string | null): string | null => (text === null || text.endsWith('infinity') ? null : text);

/** Why one animal may not breed, said of it alone. */
export const ownWords: Partial<Record<ExcludedAnimal['reason'], string>> = {
  'keeper-left': say`Its keeper has left the club.`,
  'too-young': say`It is younger than the least age at which its species matures.`,
  'beyond-lifespan': say`It is older than its species is known to live: check whether it still does.`,
};

/** What a keeper must know before breeding from an animal that may breed. */
export function breedingWarnings(breeder: Breeder | undefined, isUnsexed: boolean): string[] {
  return [
    ...(breeder?.isDisputed === true ? [say`Its label is disputed: its young would carry that on.`] : []),
    ...(isUnsexed ? [say`Its sex is not known yet.`] : []),
    ...(breeder?.age === null ? [say`Its hatching date is not recorded: check that it is grown.`] : []),
  ];
}
