import { columnOf, type Room } from './family-rooms.ts';
import type { FamilyKin, FamilyTimes } from './family-times.ts';
import { FreePlaces } from './free-places.ts';
import type { LineFamilies } from './line-families.ts';
import { sizes } from './line-sizes.ts';
import { settleLane, type Standing } from './settle-across.ts';

/** Sweeps over the lanes, down and up in turn, that bring families near their kin. */
const SWEEPS = 24;
/** Free space that lanes leave beside their families for those that reach in from the next lane. */
const LANE_SPACE = 1.35;

/** Finds where families stand from left to right. */
export class PlacesAcross {
  readonly #graph: LineFamilies;
  readonly #rooms: readonly Room[];
  readonly #tops: Float64Array;
  readonly #order: readonly number[];
  readonly #lanes: readonly (readonly number[])[];
  readonly #x: Float64Array;
  /** Each family's links, as [where it begins, family, weight] of parents above and of young below. */
  readonly #up: readonly (readonly Pull[])[];
  readonly #down: readonly (readonly Pull[])[];

  constructor(graph: LineFamilies, kin: FamilyKin, times: FamilyTimes, rooms: readonly Room[], tops: Float64Array) {
    this.#graph = graph;
    this.#rooms = rooms;
    this.#tops = tops;
    this.#x = new Float64Array(graph.families.length);
    this.#order = [...times.order].sort((one, other) => (tops[one] ?? 0) - (tops[other] ?? 0) || one - other);
    this.#lanes = lanesOf(this.#order, tops);
    [this.#up, this.#down] = this.#pulls();
    this.#begin(kin);
  }

  settle(): Float64Array {
    for (let sweep = 0; sweep < SWEEPS; sweep++) {
      const isDown = sweep % 2 === 1;
      const lanes = isDown ? this.#lanes : this.#lanes.toReversed();
      for (const lane of lanes) this.#settle(lane, isDown);
    }
    return this.#makeRoom();
  }

  #pulls(): [Pull[][], Pull[][]] {
    const { families, familyOf, links } = this.#graph;
    const up: Pull[][] = families.map(() => []);
    const down: Pull[][] = families.map(() => []);
    for (const { animal, family, probability } of links) {
      const from = familyOf[animal] ?? -1;
      if (from < 0 || from === family) continue;
      const offset = this.#offsetOf(from, animal);
      up[family]?.push({ family: from, offset, weight: probability });
      down[from]?.push({ family, offset: -offset, weight: probability });
    }
    return [up, down];
  }

  /** Where an animal stands in its family, from the middle. */
  #offsetOf(family: number, animal: number): number {
    const place = this.#graph.families[family]?.animals.indexOf(animal) ?? 0;
    return columnOf(place, this.#rooms[family], this.#graph.families[family]?.animals.length ?? 1);
  }

  /** Those without parents side by side in the order of their lineage, all others below their parents. */
  #begin({ above, below }: FamilyKin): void {
    let free = 0;
    const isPlaced = new Uint8Array(this.#x.length);
    for (const top of this.#order) {
      if ((above[top] ?? []).length > 0) continue;
      const width = this.#rooms[top]?.width ?? 0;
      this.#x[top] = free + width / 2;
      free += width + 2 * sizes.gap * Math.sqrt((below[top] ?? []).length + 1);
      isPlaced[top] = 1;
    }
    for (const family of this.#order) if (isPlaced[family] === 0) this.#x[family] = this.#wish(family, true);
  }

  #wish(family: number, isDown: boolean): number {
    const own = this.#x[family] ?? 0;
    const pulls = isDown ? this.#up[family] : this.#down[family];
    if (!pulls || pulls.length === 0) return own;
    let [sum, weights] = [0, 0];
    for (const pull of pulls) {
      sum += pull.weight * ((this.#x[pull.family] ?? 0) + pull.offset);
      weights += pull.weight;
    }
    return sum / weights;
  }

  #settle(lane: readonly number[], isDown: boolean): void {
    const boxes = lane
      .map((box): Standing => ({
        box,
        wish: this.#wish(box, isDown),
        width: (this.#rooms[box]?.width ?? 0) * LANE_SPACE,
      }))
      .sort((one, other) => one.wish - other.wish || one.box - other.box);
    settleLane(boxes, (box, middle) => (this.#x[box] = middle));
  }

  /** Lanes only looked at their own families: whoever reaches over into the next one is set aside here. */
  #makeRoom(): Float64Array {
    const places = new FreePlaces(sizes.lane);
    const settled = new Float64Array(this.#x.length);
    for (const lane of this.#lanes)
      for (const family of [...lane].sort((one, other) => (this.#x[one] ?? 0) - (this.#x[other] ?? 0) || one - other)) {
        const room = this.#rooms[family];
        const top = this.#tops[family] ?? 0;
        if (!room) continue;
        settled[family] = places.take(this.#x[family] ?? 0, room.width, top - room.above, top + room.below);
      }
    return settled;
  }
}

interface Pull {
  readonly family: number;
  readonly offset: number;
  readonly weight: number;
}

function lanesOf(order: readonly number[], tops: Float64Array): number[][] {
  const lanes = new Map<number, number[]>();
  for (const family of order) {
    const at = Math.floor((tops[family] ?? 0) / sizes.lane);
    const lane = lanes.get(at) ?? [];
    lane.push(family);
    lanes.set(at, lane);
  }
  return [...lanes].sort(([one], [other]) => one - other).map(([, lane]) => lane);
}
