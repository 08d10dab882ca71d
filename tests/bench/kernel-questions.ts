import { computeInbreeding } from '../../api/lineage/kernel/inbreeding.ts';
import { kinshipMatrix } from '../../api/lineage/kernel/kinship.ts';
import { meanKinship, meanKinshipOf } from '../../api/lineage/kernel/mean-kinship.ts';
import type { Pedigree } from '../../api/lineage/kernel/pedigree.ts';
import { descendantClutches, recomputeClutches } from '../../api/lineage/kernel/recompute.ts';
import type { KernelRow } from './kernel.ts';
import { buildShape, type Shape } from './kernel-shapes.ts';
import { medianOf } from './stopwatch.ts';

const LINES: Shape = { name: '2 000 lines', lines: 2000, animalsPerLine: 500, breeders: 20, clutchSize: 5, crosses: 0 };
const REGISTERS: readonly Shape[] = [
  LINES,
  { ...LINES, name: '2 000 lines, 2 % crosses', crosses: 0.02 },
  { ...LINES, name: 'one closed population, 400 breeders', lines: 1, animalsPerLine: 1_000_000, breeders: 400 },
];

/** What keepers, the matching and a change of one record ask of registers of a million animals. */
export function benchQuestions(): KernelRow[] {
  return REGISTERS.flatMap((shape) => questionsOf(shape, buildShape(shape)));
}

function questionsOf({ name, lines }: Shape, pedigree: Pedigree): KernelRow[] {
  const inbreeding = computeInbreeding(pedigree);
  const animals = pedigree.clutchOf.length;
  const living = Int32Array.from({ length: animals / 5 }, (_, place) => animals - 1 - place);
  const spread = (count: number): Int32Array =>
    Int32Array.from({ length: count }, (_, place) => living[Math.floor((place * living.length) / count)] ?? 0);
  // Clutches go round the lines, after the founders of all of them.
  const isOfLine = (animal: number): boolean =>
    lines === 1 ? animal >= animals - 500 : Math.max(pedigree.clutchOf[animal] ?? 0, 0) % lines === 7;
  const line = Int32Array.from(pedigree.clutchOf.keys()).filter(isOfLine);
  const last = pedigree.pairStart.length - 2;
  const middle = Int32Array.of(Math.floor(0.9 * last));
  const row = (what: string, budget: number | string, task: () => unknown): KernelRow => ({
    what: `${what}: ${name}`,
    animals,
    milliseconds: medianOf(task, 5).milliseconds,
    budget,
  });
  return [
    row('mean kinship of everybody with the living', 500, () => meanKinship(pedigree, inbreeding, living)),
    row(lines === 1 ? 'mean kinship of the last 500' : 'mean kinship of one line', '', () =>
      meanKinshipOf(pedigree, inbreeding, line, line),
    ),
    row('kinship among 2 000 of the living', 2000, () => kinshipMatrix(pedigree, inbreeding, spread(2000))),
    row('kinship among 10 of the living', '', () => kinshipMatrix(pedigree, inbreeding, spread(10))),
    row('figures of the last clutch', '', () =>
      recomputeClutches(pedigree, inbreeding.order, inbreeding, Int32Array.of(last)),
    ),
    row('figures after a correction of a clutch nine tenths on', '', () =>
      recomputeClutches(pedigree, inbreeding.order, inbreeding, descendantClutches(pedigree, inbreeding.order, middle)),
    ),
  ];
}
