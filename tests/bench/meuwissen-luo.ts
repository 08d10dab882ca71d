import type { Pedigree } from '../../api/lineage/kernel/pedigree.ts';
import { textbookRows } from './textbook.ts';

/** Animals between two looks at the clock. */
const CLOCK = 256;

/**
 * Inbreeding coefficients by the textbook method in TypeScript: the same as meuwissen-luo.c, line by line, on typed arrays.
 * Meuwissen & Luo (1992), Genet. Sel. Evol. 24:305-313.
 *
 * @param limit milliseconds after which it is given up
 * @returns milliseconds, and the sum of F over all animals; null if it was given up.
 */
export function runTextbook(
  variant: 'list' | 'heap',
  pedigree: Pedigree,
  limit: number,
): { milliseconds: number; sum: number } | null {
  const { sire, dam } = textbookRows(pedigree);
  const start = performance.now();
  const animals = sire.length;
  const F = new Float64Array(animals);
  const part = new Float64Array(animals);
  const coefficient = new Float64Array(animals);
  const waiting = variant === 'list' ? new SortedList(coefficient) : new Heap(coefficient);
  const halfInbreeding = (parent: number): number => (parent < 0 ? -1 : (F[parent] as number));
  let sum = 0;
  for (let animal = 0; animal < animals; animal++) {
    const father = sire[animal] as number;
    const mother = dam[animal] as number;
    part[animal] = 0.5 - 0.25 * (halfInbreeding(father) + halfInbreeding(mother));
    if (father < 0 || mother < 0) F[animal] = 0;
    else if (animal > 0 && father === sire[animal - 1] && mother === dam[animal - 1])
      F[animal] = F[animal - 1] as number;
    else F[animal] = inbreedingOf(animal, sire, dam, part, coefficient, waiting);
    sum += F[animal] as number;
    if (animal % CLOCK === 0 && performance.now() - start > limit) return null;
  }
  return { milliseconds: performance.now() - start, sum };
}

function inbreedingOf(
  animal: number,
  sire: Int32Array,
  dam: Int32Array,
  part: Float64Array,
  coefficient: Float64Array,
  waiting: SortedList | Heap,
): number {
  let sum = 0;
  waiting.add(animal, 1);
  while (!waiting.isEmpty) {
    const ancestor = waiting.take();
    const share = coefficient[ancestor] as number;
    coefficient[ancestor] = 0;
    sum += share * share * (part[ancestor] as number);
    waiting.add(sire[ancestor] as number, 0.5 * share);
    waiting.add(dam[ancestor] as number, 0.5 * share);
  }
  return sum - 1;
}

/** The waiting list of the paper: linked, the youngest first. */
class SortedList {
  readonly #coefficient: Float64Array;
  readonly #nextOlder: Int32Array;
  #head = -1;

  constructor(coefficient: Float64Array) {
    this.#coefficient = coefficient;
    this.#nextOlder = new Int32Array(coefficient.length);
  }

  get isEmpty(): boolean {
    return this.#head < 0;
  }

  add(animal: number, share: number): void {
    if (animal < 0) return;
    const coefficient = this.#coefficient;
    if (coefficient[animal] === 0) this.#insert(animal);
    coefficient[animal] = (coefficient[animal] as number) + share;
  }

  #insert(animal: number): void {
    const nextOlder = this.#nextOlder;
    if (this.#head < animal) {
      nextOlder[animal] = this.#head;
      this.#head = animal;
      return;
    }
    let before = this.#head;
    while ((nextOlder[before] as number) > animal) before = nextOlder[before] as number;
    nextOlder[animal] = nextOlder[before] as number;
    nextOlder[before] = animal;
  }

  take(): number {
    const youngest = this.#head;
    this.#head = this.#nextOlder[youngest] as number;
    return youngest;
  }
}

/** A binary heap, the youngest on top. */
class Heap {
  readonly #coefficient: Float64Array;
  readonly #heap: Int32Array;
  #waiting = 0;

  constructor(coefficient: Float64Array) {
    this.#coefficient = coefficient;
    this.#heap = new Int32Array(coefficient.length + 1);
  }

  get isEmpty(): boolean {
    return this.#waiting === 0;
  }

  add(animal: number, share: number): void {
    if (animal < 0) return;
    const coefficient = this.#coefficient;
    if (coefficient[animal] === 0) this.#insert(animal);
    coefficient[animal] = (coefficient[animal] as number) + share;
  }

  #insert(animal: number): void {
    const heap = this.#heap;
    let at = this.#waiting++;
    while (at > 0 && (heap[(at - 1) >> 1] as number) < animal) {
      heap[at] = heap[(at - 1) >> 1] as number;
      at = (at - 1) >> 1;
    }
    heap[at] = animal;
  }

  take(): number {
    const heap = this.#heap;
    const youngest = heap[0] as number;
    const last = heap[--this.#waiting] as number;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= this.#waiting) break;
      if (child + 1 < this.#waiting && (heap[child + 1] as number) > (heap[child] as number)) child++;
      if ((heap[child] as number) <= last) break;
      heap[at] = heap[child] as number;
      at = child;
    }
    heap[at] = last;
    return youngest;
  }
}
