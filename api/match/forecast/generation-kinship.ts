/**
 * Expected kinships among the animals of one generation. Animals that stand in the same relation to all others, as clutch-mates do, are one
 * family: kinship is kept by families. Breeders of the register are a family each.
 */
export class GenerationKinship {
  /** How many families there are. */
  readonly families: number;
  readonly #between: Float64Array;
  readonly #self: Float64Array;
  readonly #size: number;

  /**
   * @param between families × families: kinship of two animals of the families, of two different ones on the diagonal
   * @param self kinship of an animal of each family with itself, ½(1+F)
   * @param size animals of each family; animal i belongs to family ⌊i / size⌋
   */
  constructor(between: Float64Array, self: Float64Array, size: number) {
    this.families = self.length;
    this.#between = between;
    this.#self = self;
    this.#size = size;
  }

  /**
   * Kinships of animals of which each is a family of its own.
   *
   * @param matrix animals × animals, ½(1+F) on the diagonal
   */
  static ofBreeders(matrix: Float64Array, animals: number): GenerationKinship {
    return new GenerationKinship(
      matrix,
      Float64Array.from({ length: animals }, (_, animal) => matrix[animal * (animals + 1)] ?? 0),
      1,
    );
  }

  familyOf(animal: number): number {
    return Math.floor(animal / this.#size);
  }

  /** Kinship of two different animals of two families, or of one. */
  between(family: number, other: number): number {
    return this.#between[family * this.families + other] ?? 0;
  }

  /** Kinship of an animal of a family with itself. */
  selfOf(family: number): number {
    return this.#self[family] ?? 0;
  }

  /** Kinship of two animals, which may be one. */
  of(animal: number, other: number): number {
    const family = this.familyOf(animal);
    return animal === other ? this.selfOf(family) : this.between(family, this.familyOf(other));
  }

  /** Mean kinship of all animals, each with itself included. */
  get mean(): number {
    const size = this.#size;
    let sum = 0;
    for (let family = 0; family < this.families; family++) {
      sum += size * (this.selfOf(family) + (size - 1) * this.between(family, family));
      for (let other = 0; other < this.families; other++)
        if (other !== family) sum += size * size * this.between(family, other);
    }
    return sum / (this.families * size) ** 2;
  }

  /** Mean inbreeding coefficient of all animals. */
  get inbreeding(): number {
    return this.#self.reduce((sum, self) => sum + 2 * self - 1, 0) / this.families;
  }

  /**
   * Kinships of the next generation: ¼ of those between the parents of two young, and ½(1 + φ of the parents) of one with itself (Malécot
   * 1948).
   *
   * @param sires for each clutch its sire, an animal of this generation
   * @param dams for each clutch its dam
   * @param youngKept young of each clutch
   */
  next(sires: Int32Array, dams: Int32Array, youngKept: number): GenerationKinship {
    const clutches = sires.length;
    const between = new Float64Array(clutches * clutches);
    const self = new Float64Array(clutches);
    for (let one = 0; one < clutches; one++) {
      const [sire, dam] = [sires[one] ?? -1, dams[one] ?? -1];
      self[one] = 0.5 * (1 + this.of(sire, dam));
      for (let other = 0; other <= one; other++) {
        const [otherSire, otherDam] = [sires[other] ?? -1, dams[other] ?? -1];
        const kinship =
          0.25 *
          (this.of(sire, otherSire) + this.of(sire, otherDam) + this.of(dam, otherSire) + this.of(dam, otherDam));
        between[one * clutches + other] = between[other * clutches + one] = kinship;
      }
    }
    return new GenerationKinship(between, self, youngKept);
  }
}
