import type { AssignmentPlan } from './assignment-plan.ts';

/** Computes the inbreeding coefficient of one animal, exactly, under one assignment of parents after the other. */
export class AssignmentKinship {
  readonly #plan: AssignmentPlan;
  /** width × width. Places of animals that an assignment does not lead to hold numbers of no meaning. */
  readonly #kinship: Float64Array;
  readonly #row: Float64Array;
  /** Which clutches, and which of their young, the chosen parents lead to. */
  readonly #isNeeded: Uint8Array;
  readonly #isParent: Uint8Array;

  constructor(plan: AssignmentPlan) {
    const { width, certain, kinships, count, young } = plan;
    this.#plan = plan;
    this.#kinship = new Float64Array(width * width);
    for (let place = 0; place < certain; place++)
      this.#kinship.set(kinships.subarray(place * certain, (place + 1) * certain), place * width);
    this.#row = new Float64Array(width);
    this.#isNeeded = new Uint8Array(count);
    this.#isParent = new Uint8Array(young.length);
  }

  /**
   * The inbreeding coefficient of the animal, 0 to 1, in the certain pedigree that is left when each clutch has one pair of parents
   * (Wright 1922, Malécot 1948).
   *
   * @param chosen for each clutch of the plan the pair that are its parents
   */
  inbreeding(chosen: Int32Array): number {
    const last = this.#plan.count - 1;
    this.#findNeeded(chosen);
    for (let clutch = 0; clutch < last; clutch++)
      if (this.#isNeeded[clutch] === 1) this.#writeYoung(clutch, chosen[clutch] as number);
    return this.#ofYoung(chosen[last] as number);
  }

  /** Candidates who are not chosen have no part in it, nor their ancestors. */
  #findNeeded(chosen: Int32Array): void {
    const { count, sireYoung, damYoung, youngClutch } = this.#plan;
    const isNeeded = this.#isNeeded.fill(0);
    const isParent = this.#isParent.fill(0);
    isNeeded[count - 1] = 1;
    for (let clutch = count - 1; clutch >= 0; clutch--) {
      if (isNeeded[clutch] === 0) continue;
      const pair = chosen[clutch] as number;
      const sire = sireYoung[pair] as number;
      const dam = damYoung[pair] as number;
      if (sire >= 0) isParent[sire] = isNeeded[youngClutch[sire] as number] = 1;
      if (dam >= 0) isParent[dam] = isNeeded[youngClutch[dam] as number] = 1;
    }
  }

  #ofYoung(pair: number): number {
    const sire = this.#plan.pairSire[pair] as number;
    const dam = this.#plan.pairDam[pair] as number;
    return sire < 0 || dam < 0 ? 0 : (this.#kinship[sire * this.#plan.width + dam] as number);
  }

  /** Writes the kinships of those young of a clutch that are parents, with everybody and among each other. */
  #writeYoung(clutch: number, pair: number): void {
    const { width, pairSire, pairDam, youngStart, young } = this.#plan;
    const kinship = this.#kinship;
    const row = this.#row;
    const sire = pairSire[pair] as number;
    const dam = pairDam[pair] as number;
    const inbreeding = this.#ofYoung(pair);
    const within = 0.25 * (this.#self(sire) + this.#self(dam) + 2 * inbreeding);
    row.fill(0);
    for (const parent of [sire, dam]) {
      if (parent < 0) continue;
      const from = parent * width;
      for (let place = 0; place < width; place++)
        row[place] = (row[place] as number) + 0.5 * (kinship[from + place] as number);
    }
    const start = youngStart[clutch] as number;
    const end = youngStart[clutch + 1] as number;
    for (let one = start; one < end; one++) row[young[one] as number] = within;
    for (let one = start; one < end; one++) {
      if (this.#isParent[one] === 0) continue;
      const animal = young[one] as number;
      kinship.set(row, animal * width);
      for (let place = 0; place < width; place++) kinship[place * width + animal] = row[place] as number;
      kinship[animal * width + animal] = 0.5 * (1 + inbreeding);
    }
  }

  /** Kinship with itself; ½ of a frog nobody knows. */
  #self(place: number): number {
    return place < 0 ? 0.5 : (this.#kinship[place * this.#plan.width + place] as number);
  }
}
