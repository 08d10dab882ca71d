/** Quarters of the disc that stands for an F: 0, to 1/32, to 1/16, to 1/8, above. */
export function quartersOf(expected: number): 0 | 1 | 2 | 3 | 4 {
  if (expected < 1e-9) return 0;
  if (expected <= 1 / 32 + 1e-9) return 1;
  if (expected <= 1 / 16 + 1e-9) return 2;
  return expected <= 1 / 8 + 1e-9 ? 3 : 4;
}
