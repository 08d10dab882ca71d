import { pathToFileURL } from 'node:url';
import { ancestralInbreeding } from '../../api/lineage/kernel/ancestral-inbreeding.ts';
import { pedigreeDepth } from '../../api/lineage/kernel/depth.ts';
import { GenomeFlow } from '../../api/lineage/kernel/genome-flow.ts';
import { computeInbreeding, type Inbreeding } from '../../api/lineage/kernel/inbreeding.ts';
import { partialInbreeding } from '../../api/lineage/kernel/partial-inbreeding.ts';
import type { Pedigree } from '../../api/lineage/kernel/pedigree.ts';
import { inbreedingLoops } from '../../api/lineage/kernel/inbreeding-loops.ts';
import { measureSet } from '../../api/lineage/kernel/set-measures.ts';
import { buildShape, SHAPES } from './kernel-shapes.ts';

/** One line of the table: what was measured in which population, and how long it took. */
interface MeasureRow {
  readonly population: string;
  readonly what: string;
  /** Animals of the set; ancestors' clutches for questions about one animal. */
  readonly size: number;
  readonly milliseconds: number;
}

/** The populations: lines, lines with crosses, and one closed population. */
const POPULATIONS = ['2 000 lines x 500', '2 000 lines x 500, 2 % crosses', '100 000 closed, 400 breeders'];
/** Years that the animals of a population hatched in. */
const YEARS = 30;
const ANIMALS = 50;

/** Measures of one animal and of sets, in milliseconds. */
export async function benchMeasures(): Promise<MeasureRow[]> {
  const rows: MeasureRow[] = [];
  for (const name of POPULATIONS) {
    const shape = SHAPES.find((one) => one.name === name);
    if (shape === undefined) throw new Error(`There is no population ${name} any more.`);
    const pedigree = buildShape(shape);
    const inbreeding = computeInbreeding(pedigree);
    rows.push(...measureOne(name, pedigree, inbreeding), ...measureSets(name, pedigree, inbreeding, shape.lines));
    await new Promise(setImmediate); // lets an interrupted bench end between two populations
  }
  return rows;
}

/** The last animals of the population, which have the most ancestors. */
function measureOne(population: string, pedigree: Pedigree, inbreeding: Inbreeding): MeasureRow[] {
  const places = new Int32Array(inbreeding.order.clutches.length).fill(-1);
  const last = pedigree.clutchOf.length - 1;
  const flows = Array.from({ length: ANIMALS }, (_, back) => {
    const flow = new GenomeFlow(pedigree, inbreeding.order, places, last - 5 * back);
    const clutch = flow.clutches.at(-1) ?? -1;
    const pair = pedigree.pairStart[clutch] ?? -1;
    const pairs = [{ a: pedigree.pairSire[pair] ?? -1, b: pedigree.pairDam[pair] ?? -1, probability: 1 }];
    return { clutches: flow.clutches, pairs };
  });
  const size = flows.reduce((sum, { clutches }) => sum + clutches.length, 0) / ANIMALS;
  const each = (what: string, task: (flow: (typeof flows)[number]) => unknown): MeasureRow => {
    flows.slice(0, 5).forEach(task); // warms up the compiler
    const start = performance.now();
    flows.forEach(task);
    return { population, what, size, milliseconds: (performance.now() - start) / ANIMALS };
  };
  return [
    each('partial inbreeding of one', ({ clutches, pairs }) => partialInbreeding(pedigree, clutches, pairs)),
    each('200 loops of one, or that it has too many pairs of ancestors', ({ pairs }) =>
      inbreedingLoops(pedigree, inbreeding, pairs, { most: 200 }),
    ),
    each('ancestral inbreeding of one', ({ clutches }) => ancestralInbreeding(pedigree, inbreeding, clutches)),
  ];
}

function measureSets(population: string, pedigree: Pedigree, inbreeding: Inbreeding, lines: number): MeasureRow[] {
  const animals = pedigree.clutchOf.length;
  const { generationEquivalents } = pedigreeDepth(pedigree, inbreeding.order);
  const all = Int32Array.from(pedigree.clutchOf.keys());
  // animals are numbered in time, the lines side by side
  const oneLine = all.filter((animal) => (pedigree.clutchOf[animal] ?? -1) % Math.max(lines, 200) === 7);
  return [oneLine, all.subarray(animals - animals / 10), all].map((members) => {
    const set = {
      members,
      years: Int16Array.from(members, (member) => 1990 + Math.floor((YEARS * member) / animals)),
      generationEquivalents: Float64Array.from(members, (member) => generationEquivalents[member] ?? 0),
    };
    const start = performance.now();
    measureSet(pedigree, inbreeding, set, 24);
    const what = `all measures of a set, ${new Set(set.years).size} years`;
    return { population, what, size: members.length, milliseconds: performance.now() - start };
  });
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href)
  console.table(
    (await benchMeasures()).map((row) => ({ ...row, milliseconds: Number(row.milliseconds.toPrecision(3)) })),
  );
