import { findAncestors, parentsFirst, partOfPedigree } from './ancestral-part.ts';
import { chainChosen, type ChosenYoung } from './chosen.ts';
import { groupByComponent } from './components.ts';
import { emptyFigures, findBreeding, type Breeding } from './figures.ts';
import { FrontierPlanner, type FrontierPlan } from './frontier-plan.ts';
import { FrontierSweep } from './frontier-sweep.ts';
import type { PedigreeOrder } from './order.ts';
import type { Pedigree } from './pedigree.ts';
import { withSearchSpace } from './search-space.ts';

/**
 * Kinships among chosen individuals by a frontier sweep over their ancestry that keeps a column for each of them. Animals
 * of different components, families that share nothing, are not kin.
 */
export class ChosenSweep {
  /** The ancestry of the chosen, who are its first individuals, in the order given. */
  readonly #part: Pedigree;
  readonly #order: PedigreeOrder;
  readonly #breeding: Breeding;
  readonly #chosen: ChosenYoung;
  readonly #planner: FrontierPlanner;
  /** Per component, when first wanted. */
  readonly #plans: FrontierPlan[] = [];

  /** @param individuals each once */
  constructor(pedigree: Pedigree, order: PedigreeOrder, individuals: Int32Array) {
    this.#part = partWithFounders(ancestralPart(pedigree, order, individuals), individuals.length);
    this.#order = groupByComponent(this.#part, null);
    this.#breeding = findBreeding(this.#part, this.#order.clutches);
    this.#chosen = chainChosen(this.#part, individuals.length);
    this.#planner = new FrontierPlanner(this.#part, this.#order, this.#breeding, Infinity, this.#chosen);
  }

  /** For each component: the places of the chosen that belong to it. */
  components(): number[][] {
    const { componentStart, positionOf } = this.#order;
    const componentAt = new Int32Array(positionOf.length);
    const members: number[][] = [];
    for (let component = 0; component + 1 < componentStart.length; component++) {
      members.push([]);
      componentAt.fill(component, componentStart[component], componentStart[component + 1]);
    }
    const clutchOf = this.#clutchesOfChosen();
    for (let place = 0; place < this.#chosen.count; place++)
      members[componentAt[positionOf[clutchOf[place] as number] as number] as number]?.push(place);
    return members;
  }

  /** Row elements that a sweep of the component reads and writes. */
  elements(component: number): number {
    return this.#plan(component).elements;
  }

  /** Bytes that its matrix takes. */
  bytes(component: number): number {
    const { width, staying } = this.#plan(component);
    return 8 * width * (width + staying + 16);
  }

  /** Clutches of the component. */
  size(component: number): number {
    const { componentStart } = this.#order;
    return (componentStart[component + 1] as number) - (componentStart[component] as number);
  }

  /** Sweeps components. @param tell told for every two chosen of a component, once, with their places */
  sweep(components: readonly number[], tell: (place: number, other: number, kinship: number) => void): void {
    let told: number[] = [];
    const sweep = new FrontierSweep(
      this.#part,
      this.#order,
      this.#breeding,
      emptyFigures(this.#order.clutches.length),
      {
        ...this.#chosen,
        tell: (individual, kinships, start) => {
          for (let before = 0; before < told.length; before++)
            tell(individual, told[before] as number, kinships[start + before] as number);
          told.push(individual);
        },
      },
    );
    for (const component of components) {
      told = [];
      const { width, staying } = this.#plan(component);
      sweep.sweep(component, width, staying);
    }
  }

  #plan(component: number): FrontierPlan {
    return (this.#plans[component] ??= this.#planner.plan(component));
  }

  /** A clutch of its component for each of the chosen: its own, or one that a founder is a parent of. */
  #clutchesOfChosen(): Int32Array {
    const { clutchOf, pairStart, pairSire, pairDam } = this.#part;
    const clutches = clutchOf.slice(0, this.#chosen.count);
    for (let clutch = 0; clutch + 1 < pairStart.length; clutch++)
      for (let pair = pairStart[clutch] as number; pair < (pairStart[clutch + 1] as number); pair++)
        for (const parent of [pairSire[pair] as number, pairDam[pair] as number])
          if (parent >= 0 && parent < clutches.length && (clutches[parent] as number) < 0) clutches[parent] = clutch;
    return clutches;
  }
}

function ancestralPart(pedigree: Pedigree, order: PedigreeOrder, individuals: Int32Array): Pedigree {
  return withSearchSpace(pedigree, (space) => {
    const own = individuals
      .map((individual) => pedigree.clutchOf[individual] as number)
      .filter((clutch) => clutch >= 0);
    const clutches = findAncestors(pedigree, own, space) ?? []; // without a limit there is no null
    return partOfPedigree(pedigree, parentsFirst(order, clutches), space, individuals);
  });
}

/**
 * Gives each founder among the first so many individuals that has no young in a part a clutch at its end, so that a sweep
 * meets it.
 */
function partWithFounders(part: Pedigree, count: number): Pedigree {
  const { clutchOf, pairStart, pairSire, pairDam, pairProbability } = part;
  const isMet = Uint8Array.from(clutchOf, (clutch) => (clutch >= 0 ? 1 : 0));
  for (const parents of [pairSire, pairDam]) for (const parent of parents) if (parent >= 0) isMet[parent] = 1;
  const lonely = [...isMet.subarray(0, count).keys()].filter((individual) => isMet[individual] === 0);
  if (lonely.length === 0) return part;
  const pairs = pairSire.length;
  return {
    ...part,
    pairStart: joined(
      pairStart,
      lonely.map((_, place) => pairs + place + 1),
    ),
    pairSire: joined(pairSire, lonely),
    pairDam: joined(
      pairDam,
      lonely.map(() => -1),
    ),
    pairProbability: Float64Array.from({ length: pairs + lonely.length }, (_, pair) => pairProbability[pair] ?? 1),
  };
}

function joined(start: Int32Array, end: readonly number[]): Int32Array {
  const all = new Int32Array(start.length + end.length);
  all.set(start);
  all.set(end, start.length);
  return all;
}
