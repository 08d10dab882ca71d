/** The living animals of a line, as far as its gene diversity goes. */
export interface LivingLine {
  /** How many live. */
  readonly count: number;
  /** Their mean kinship with each other, themselves included: 1 minus it is the gene diversity. */
  readonly meanKinship: number;
}

/**
 * What one more animal adds to the gene diversity of a line (1 − mean kinship of the living with each other, Lacy 1995): with N
 * living, whose mean kinship is M, an animal of mean kinship m with them and of inbreeding F makes it
 * (N²M + 2Nm + ½(1+F)) / (N+1)².
 *
 * @returns the difference, below 0 where the animal takes from it
 */
export function diversityGain({ count, meanKinship }: LivingLine, youngMean: number, inbreeding: number): number {
  const after = (count ** 2 * meanKinship + 2 * count * youngMean + (1 + inbreeding) / 2) / (count + 1) ** 2;
  return meanKinship - after;
}
