import { computeInbreeding } from '../../api/lineage/kernel/inbreeding.ts';
import { meanKinship } from '../../api/lineage/kernel/mean-kinship.ts';
import { buildShape, type Shape } from './kernel-shapes.ts';
import { medianOf } from './stopwatch.ts';
import { raceTextbook, type Race } from './textbook-race.ts';
import { Textbook } from './textbook.ts';

/** One point of the scaling curve. */
export interface ScaleRow extends Race {
  readonly animals: number;
  readonly shape: string;
  /** F of all. */
  readonly milliseconds: number;
  readonly nanosecondsAnAnimal: number;
  /** Mean kinship of everybody with the last fifth. */
  readonly meanKinship: number;
  /** Most memory the process has taken so far, in MB: sizes grow from row to row. */
  readonly megabytes: number;
}

const SIZES = [1000, 10_000, 100_000, 1_000_000, 10_000_000];
/** Beyond this the textbook is not run: it would add minutes and no knowledge. */
const RACED = 1_000_000;

/** The scaling curve: lines of 500, apart and crossed, from a thousand animals to ten million. */
export async function benchScale(): Promise<ScaleRow[]> {
  const textbook = Textbook.compile();
  const rows: ScaleRow[] = [];
  for (const animals of SIZES)
    for (const crosses of [0, 0.02]) {
      const lines = animals / 500;
      const name = crosses === 0 ? 'lines of 500' : 'lines of 500, 2 % crosses';
      rows.push(measure({ name, lines, animalsPerLine: 500, breeders: 20, clutchSize: 5, crosses }, textbook));
      await new Promise(setImmediate);
    }
  textbook?.remove();
  return rows;
}

function measure(shape: Shape, textbook: Textbook | null): ScaleRow {
  const pedigree = buildShape(shape);
  const animals = pedigree.clutchOf.length;
  const runs = animals > RACED ? 1 : 5;
  const { milliseconds, result } = medianOf(() => computeInbreeding(pedigree), runs);
  const members = Int32Array.from({ length: Math.floor(animals / 5) }, (_, place) => animals - 1 - place);
  const means = medianOf(() => meanKinship(pedigree, result, members), runs);
  const megabytes = process.resourceUsage().maxRSS / 1024;
  const race =
    animals > RACED
      ? { textbook: '', ratio: '', compiled: '', compiledRatio: '' }
      : raceTextbook(pedigree, result, milliseconds, textbook);
  return {
    animals,
    shape: shape.name,
    milliseconds,
    nanosecondsAnAnimal: (milliseconds * 1e6) / animals,
    meanKinship: means.milliseconds,
    megabytes,
    ...race,
  };
}
