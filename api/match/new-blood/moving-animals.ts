import type { EntityManager } from 'typeorm';
import { dateBounds } from '../../../shared/edtf.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import type { RecordNames } from '../../lineage/record-names.ts';
import { sexOf } from '../../lineage/register-graph.ts';
import { readProven } from '../../register/individuals/individual-details.queries.ts';
import { spanBetween } from '../../register/warnings/spans.ts';
import type { ExcludedAnimal } from '../breeders.ts';
import { carriesDispute } from '../disputed-labels.ts';
import { ageView, hatchedOf, ownWords } from './carrier-views.ts';
import { readHoused } from './carriers.queries.ts';
import type { MovingAnimalView } from './exchange.view.ts';
import { say } from '../../platform/say.ts';

/** Tells of animals that would go to another keeper what is to be known before. */
export class MovingTeller {
  private constructor(
    private readonly snapshot: LineageSnapshot,
    private readonly names: RecordNames,
    private readonly line: number,
    private readonly reasonOf: ReadonlyMap<number, ExcludedAnimal['reason']>,
    private readonly known: {
      readonly proven: ReadonlySet<string>;
      readonly housed: ReadonlySet<string>;
      readonly disputed: ReadonlySet<number>;
    },
  ) {}

  /** @param animals those that will be told; their names must be read already */
  static async read(
    manager: EntityManager,
    snapshot: LineageSnapshot,
    names: RecordNames,
    line: number,
    excluded: readonly ExcludedAnimal[],
    animals: readonly number[],
  ): Promise<MovingTeller> {
    const moving = [...new Set(animals)];
    const ids = moving.map((animal) => snapshot.idOf(animal));
    const [proven, housed] = await Promise.all([readProven(manager, ids), readHoused(manager, ids)]);
    const carries = carriesDispute(snapshot, moving);
    const disputed = new Set(moving.filter((_, place) => carries[place] === 1));
    const reasonOf = new Map(excluded.map(({ animal, reason }) => [animal, reason]));
    return new MovingTeller(snapshot, names, line, reasonOf, { proven, housed, disputed });
  }

  tell(animal: number): MovingAnimalView {
    const { graph } = this.snapshot;
    const id = this.snapshot.idOf(animal);
    const line = graph.lines[graph.lineOf[animal] ?? -1];
    const today = dateBounds(new Date().toISOString().slice(0, 10));
    const age = spanBetween(hatchedOf(this.names.individual(animal)), today, 'months');
    const housed = this.known.housed.has(id);
    return {
      animal: this.names.refOf(animal),
      line: line ? { id: line.id, name: line.name } : null,
      age: ageView(age),
      proven: this.known.proven.has(id),
      housed,
      warnings: [
        ...this.#crossing(animal),
        ...(this.known.disputed.has(animal) ? [say`Its label is disputed: its young would carry that on.`] : []),
        ...(sexOf(graph, animal) === 'unsexed' ? [say`Its sex is not known yet.`] : []),
        ...(age === null ? [say`Its hatching date is not recorded: check how old it is.`] : []),
        ...this.#breeding(animal),
        ...(housed ? [say`It lives in a pairing now, and would have to be taken out of it.`] : []),
      ],
    };
  }

  /** Why it may not breed, where that is not told already. */
  #breeding(animal: number): string[] {
    const reason = this.reasonOf.get(animal);
    const words = reason && ownWords[reason];
    return words === undefined ? [] : [words];
  }

  #crossing(animal: number): string[] {
    const { lineOf, lines } = this.snapshot.graph;
    if (lineOf[animal] === this.line) return [];
    const [own, here] = [lines[lineOf[animal] ?? -1]?.name ?? say`no line`, lines[this.line]?.name ?? ''];
    return [say`It belongs to ${own}: with animals of ${here} its young would be crosses, and belong to neither.`];
  }
}
