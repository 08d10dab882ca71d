/** Increase of inbreeding per generation of a set, and the effective size that it implies. */
export interface EffectiveSize {
  /** How many animals it rests on: those with more than one complete generation equivalent. */
  readonly animals: number;
  /** Mean individual increase of inbreeding per generation, 0 to 1; null without such animals. */
  readonly increase: number | null;
  /** Realised effective size, 1/(2 · increase), in animals; null where no increase is recorded. */
  readonly effectiveSize: number | null;
  /** Standard error of the effective size, in animals; null where it is undefined or rests on fewer than two animals. */
  readonly standardError: number | null;
}

/**
 * Individual increase of inbreeding per generation, ΔF = 1 − (1 − F)^(1/(t − 1)) (Gutiérrez, Cervantes & Goyache 2009).
 *
 * @param inbreeding F, 0 to 1
 * @param generationEquivalents t, complete generation equivalents
 * @returns 0 to 1; null for t of 1 or less, from which no increase can be told.
 */
export function individualIncrease(inbreeding: number, generationEquivalents: number): number | null {
  if (generationEquivalents <= 1) return null;
  return 1 - (1 - inbreeding) ** (1 / (generationEquivalents - 1));
}

/**
 * Effective size realised by a set, 1/(2 · mean ΔF), with its standard error 2 Ne² σ(ΔF)/√N (Gutiérrez, Cervantes & Goyache
 * 2009).
 *
 * @param inbreeding F of each animal
 * @param generationEquivalents t of each animal, in the same order
 */
export function realisedEffectiveSize(inbreeding: Float64Array, generationEquivalents: Float64Array): EffectiveSize {
  let animals = 0;
  let mean = 0;
  let spread = 0; // Σ (ΔF − mean)², kept up as animals come (Welford 1962)
  for (let animal = 0; animal < inbreeding.length; animal++) {
    const increase = individualIncrease(inbreeding[animal] as number, generationEquivalents[animal] as number);
    if (increase === null) continue;
    animals++;
    const before = increase - mean;
    mean += before / animals;
    spread += before * (increase - mean);
  }
  if (animals === 0) return { animals, increase: null, effectiveSize: null, standardError: null };
  if (mean <= 0) return { animals, increase: 0, effectiveSize: null, standardError: null };
  const effectiveSize = 1 / (2 * mean);
  const deviation = animals < 2 ? null : Math.sqrt(spread / (animals - 1));
  const standardError = deviation === null ? null : (2 * effectiveSize ** 2 * deviation) / Math.sqrt(animals);
  return { animals, increase: mean, effectiveSize, standardError };
}

/**
 * Effective size of a population by how many males and females breed, 4MF/(M + F), in animals (Wright 1931); the increase of
 * inbreeding per generation is 1/(2 Ne).
 *
 * @returns 0 where one sex is missing.
 */
export function effectiveSizeBySex(males: number, females: number): number {
  return males + females === 0 ? 0 : (4 * males * females) / (males + females);
}
