import type { InbreedingSpread } from '../../api/types.ts';
import { counted, decimals, grouped, percent, percentDigits } from '../../ui/figures.ts';

/** A whole number in digits; from a million on as a power of ten, since nobody counts them. */
function manyInWords(count: number | null): string {
  if (count === null) return 'more ways than can be written';
  if (count < 1e6) return `${grouped(count)} ways`;
  const power = Math.floor(Math.log10(count));
  return `${decimals(count / 10 ** power, 1)} × 10${superscript(power)} ways`;
}

const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const superscript = (number: number): string =>
  [...String(number)].map((digit) => raised[Number(digit)] ?? '').join('');

/** What the drawing rests on: how many assignments there are, how many were looked at, and by which seed. */
export function basisInWords({ method, uncertainClutches, assignments, samples, seed }: InbreedingSpread): string {
  const clutches = `${counted(uncertainClutches, ['clutch', 'clutches'])} with uncertain parents`;
  if (method === 'enumerated')
    return `${clutches} can be read in ${manyInWords(assignments)}; all of them were gone through.`;
  return `${clutches} can be read in ${manyInWords(assignments)}; ${grouped(samples)} of them were drawn, seed ${seed}.`;
}

/** The mean of what was drawn beside the expected F, so that one can see that they agree. */
export function meanInWords({ method, mean, standardError, inbreeding }: InbreedingSpread): string {
  if (method === 'enumerated') return `Expected F ${percent(inbreeding.expected)} is their mean.`;
  const error = percentDigits(standardError);
  return `Mean of the drawn ${percentDigits(mean)} ± ${error}\u202f% (standard error); expected F, exact, ${percent(inbreeding.expected)}.`;
}

/** The middle of the distribution in a sentence. */
export function spreadInWords({ values, quantiles, least, greatest }: InbreedingSpread): string {
  if (values && values.length === 1) return `F is ${percent(least)} whoever the parents were.`;
  const at = (probability: number): number =>
    quantiles.find((one) => one.probability === probability)?.value ?? Number.NaN;
  const likeliest = values?.reduce((most, one) => (one.share > most.share ? one : most));
  if (likeliest && likeliest.share >= 0.5)
    return `Likeliest, by ${percent(likeliest.share)}, F is ${percent(likeliest.value)}; it may be from ${percentDigits(least)} to ${percent(greatest)}.`;
  return `Half of the time F lies between ${percentDigits(at(0.25))} and ${percent(at(0.75))}, nine times of ten between ${percentDigits(at(0.05))} and ${percent(at(0.95))}.`;
}
