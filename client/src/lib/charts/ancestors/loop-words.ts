import type { InbreedingLoop, InbreedingLoops, LoopAncestor, LoopStep } from '$lib/api/types.ts';
import { referenceName } from '$lib/records/reference-name.ts';
import { counted, grouped, percent, written } from '$lib/ui/figures.ts';
import { allOf } from '$lib/ui/listed.ts';
import { roundedProbability } from './ancestor-table.ts';
import type { LoopsThrough } from './shown-loops.ts';

/** Where loops close, in words: "RV-12", "an unknown parent of the clutch of 2021-04-12", "founders of Import, about 1994". */
export function ancestorName({ ancestor, unknownParentOf, sources }: LoopAncestor): string {
  if (ancestor) return referenceName(ancestor);
  if (unknownParentOf) return `an unknown parent of the ${unknownParentOf.title}`;
  return `founders of ${allOf((sources ?? []).map(({ title }) => title))}`;
}

/** A number of loops; the service tells none that is too large for a number. */
export function loopCount(loops: number | null): string {
  if (loops === null) return 'more than 10³⁰⁰ loops';
  if (loops < 1e6) return counted(loops, ['loop', 'loops']);
  const [digits = '', power] = loops.toExponential(1).split('e+');
  return `about ${written(digits)} · 10${superscript(power ?? '')} loops`;
}

/** How many more loops there are than those that are told. */
export function furtherLoops(loops: number | null): string {
  if (loops === null) return 'More than can be counted';
  if (loops < 1e6) return `${grouped(loops)} more`;
  const [digits = '', power] = loops.toExponential(1).split('e+');
  return `about ${written(digits)} · 10${superscript(power ?? '')} more`;
}

/** How many steps the loops of an ancestor have. */
export function stepRange({ shortest, longest }: LoopAncestor): string {
  return shortest === longest
    ? counted(shortest, ['step', 'steps'])
    : `${grouped(shortest)} to ${grouped(longest)} steps`;
}

/** The animals on one way up, the parent first; odds stand behind a parent that is not certain. */
export function wayInWords({ animals }: InbreedingLoops, steps: readonly LoopStep[]): string[] {
  return steps.map(({ animal, as, probability }) => {
    const found = animals.find(({ id }) => id === animal);
    const name = found ? referenceName(found) : `an unknown ${as === 'either' ? 'parent' : as}`;
    return probability < 1 ? `${name} (${roundedProbability(probability)})` : name;
  });
}

/** How the part of a loop comes about (Wright 1922): "0.7 × ½⁵ × 1.13", odds first, the last factor 1 + F of the common ancestor. */
export function loopArithmetic(loop: InbreedingLoop, { sources }: LoopAncestor): string {
  const { steps, kinship, probability } = loop;
  const odds = probability < 1 ? [shortened(probability)] : [];
  if (sources) return [...odds, ...(steps > 0 ? [halves(steps)] : []), shortened(kinship)].join(' × ');
  const ownInbreeding = 2 * kinship - 1;
  return [...odds, halves(steps + 1), ...(ownInbreeding > 1e-9 ? [shortened(1 + ownInbreeding)] : [])].join(' × ');
}

/** What was chosen beside the chart, and what it adds. */
export function chosenInWords({ ancestor, loops }: LoopsThrough): string {
  const name = ancestorName(ancestor);
  const [loop] = loops;
  if (loops.length === 1 && loop)
    return `A loop of ${counted(loop.steps, ['step', 'steps'])} through ${name} adds ${percent(loop.part)} to F.`;
  const part = loops.reduce((sum, one) => sum + one.part, 0);
  return `${counted(loops.length, ['loop', 'loops'])} through ${name} add ${percent(part)} to F.`;
}

/** Says so where only some loops of a common ancestor are lit. */
export function litShare(through: LoopsThrough | null): string {
  if (!through) return '';
  const { ancestor, loops } = through;
  if (ancestor.loops !== null && ancestor.loops <= loops.length) return '';
  return `The largest of its ${loopCount(ancestor.loops)} are lit, ${loops.length} of them.`;
}

function halves(power: number): string {
  return power === 1 ? '½' : `½${superscript(String(power))}`;
}

function shortened(value: number): string {
  return written(String(Number(value.toPrecision(3))));
}

function superscript(digits: string): string {
  return [...digits].map((digit) => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)] ?? '').join('');
}
