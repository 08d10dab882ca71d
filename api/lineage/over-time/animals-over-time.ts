import { linksTo, type Link } from '../ancestor-chart.ts';
import type { LineageSnapshot } from '../lineage-snapshot.ts';

/** Most animals that a drawing of a line holds, and most candidate parents of its clutches. */
const ANIMALS_MOST = 60_000;
const LINKS_MOST = 200_000;

/**
 * The members of a line, the clutches that they hatched from and everybody who may be a parent of these, by dense numbers. A parent of
 * another line comes without its own ancestors; a withdrawn one of this line and a private one, of whichever line, bring theirs, so that
 * descent is not broken off where a record may not be seen, and the drawing tells nothing of the line of a private animal.
 */
export class AnimalsOverTime {
  /** The members first, then parents from elsewhere. */
  readonly animals: number[];
  readonly members: number;
  readonly clutches: number[] = [];
  /** Candidate parents of each clutch. */
  readonly links: (readonly Link[])[] = [];
  readonly #snapshot: LineageSnapshot;
  readonly #line: number;
  readonly #placeOf: Map<number, number>;
  readonly #clutchPlaceOf = new Map<number, number>();
  #linked = 0;

  /** @param line dense number of the line that the members belong to */
  constructor(snapshot: LineageSnapshot, line: number, members: Int32Array) {
    this.#snapshot = snapshot;
    this.#line = line;
    this.animals = [...members];
    this.members = members.length;
    this.#placeOf = new Map(this.animals.map((animal, place) => [animal, place]));
  }

  /** Whether there are more ancestors than a drawing holds; then some are missing. */
  get isTooMuch(): boolean {
    return this.animals.length > ANIMALS_MOST || this.#linked > LINKS_MOST;
  }

  /** Place of an animal in `animals`; −1 where it is not drawn. */
  placeOf(animal: number): number {
    return this.#placeOf.get(animal) ?? -1;
  }

  /** Place of the clutch that an animal hatched from in `clutches`; −1 where it is not drawn. */
  clutchPlaceOf(animal: number): number {
    return this.#clutchPlaceOf.get(this.#snapshot.graph.pedigree.clutchOf[animal] ?? -1) ?? -1;
  }

  /** @param seenAmong gives those of some animals that whoever asks may see */
  async gather(seenAmong: (animals: readonly number[]) => Promise<ReadonlySet<number>>): Promise<void> {
    const { lineOf } = this.#snapshot.graph;
    let waiting: readonly number[] = [...this.animals];
    while (waiting.length > 0 && !this.isTooMuch) {
      const parents = waiting.flatMap((animal) => this.#addClutchOf(animal));
      const seen = await seenAmong(parents);
      waiting = parents.filter((parent) => lineOf[parent] === this.#line || !seen.has(parent));
    }
  }

  /** Adds the clutch of an animal; gives the parents that are new. */
  #addClutchOf(animal: number): number[] {
    const { graph } = this.#snapshot;
    const clutch = graph.pedigree.clutchOf[animal] ?? -1;
    if (clutch < 0 || this.#clutchPlaceOf.has(clutch) || this.isTooMuch) return [];
    this.#clutchPlaceOf.set(clutch, this.clutches.length);
    this.clutches.push(clutch);
    const links = linksTo(graph, clutch);
    this.links.push(links);
    this.#linked += links.length;
    const added = links.map(({ parent }) => parent).filter((parent) => !this.#placeOf.has(parent));
    for (const parent of added) this.#placeOf.set(parent, this.animals.push(parent) - 1);
    return added;
  }
}
