import { isCertainlyBefore } from '../../shared/edtf.ts';
import { clutchWarnings } from './warnings/clutch-warnings.ts';
import type { ClutchFacts, IndividualFacts, Warning } from './warnings/facts.ts';
import { individualWarnings } from './warnings/individual-warnings.ts';
import { say } from '../platform/say.ts';

/**
 * What looks implausible in a clutch, measured against the species profiles: age of its parents at laying, a parent that had
 * died, eggs, losses, young, days since another clutch of the same certain dam, parents of different species or lines. Pure;
 * never throws; a warning is given only where every day that the vague dates allow speaks for it.
 */
export function warningsForClutch(facts: ClutchFacts): Warning[] {
  return clutchWarnings.flatMap((check) => check(facts) ?? []);
}

/**
 * What looks implausible in an animal: time from laying to hatching and from hatching to leaving the water, sex told by looks
 * too early, snout-vent length for its sex, an age beyond the lifespan, another species or line than its parents'. Pure; never
 * throws; a warning is given only where every day that the vague dates allow speaks for it.
 */
export function warningsForIndividual(facts: IndividualFacts): Warning[] {
  return individualWarnings.flatMap((check) => check(facts) ?? []);
}

/** What cannot be, whatever the species: the register refuses it. */
export interface Impossibility {
  readonly detail: string;
  readonly fields: readonly string[];
}

/** A parent that hatched after its clutch was laid. */
export function impossibleInClutch(facts: Pick<ClutchFacts, 'laid' | 'parents'>): Impossibility[] {
  const { laid } = facts;
  if (!laid) return [];
  return facts.parents
    .filter((parent) => parent.hatched !== null && isCertainlyBefore(laid, parent.hatched))
    .map((parent) => ({
      detail: say`The clutch was laid before its ${parent.role === 'either' ? say`possible parent` : parent.role} ${parent.name} hatched. Check both dates and the parent.`,
      fields: ['laid', 'parents'],
    }));
}

/** An animal that hatched before its clutch was laid. */
export function impossibleInIndividual(facts: Pick<IndividualFacts, 'laid' | 'hatched'>): Impossibility[] {
  if (!facts.laid || !facts.hatched || !isCertainlyBefore(facts.hatched, facts.laid)) return [];
  return [
    { detail: say`The animal hatched before its clutch was laid. Check both dates.`, fields: ['hatched', 'clutch'] },
  ];
}
