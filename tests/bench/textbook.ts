import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Pedigree } from '../../api/lineage/kernel/pedigree.ts';

/** Sire and dam of each animal as the textbook wants them, founders first, −1 for unknown. Parents must be certain. */
export function textbookRows({ clutchOf, pairSire, pairDam }: Pedigree): { sire: Int32Array; dam: Int32Array } {
  const sire = new Int32Array(clutchOf.length).fill(-1);
  const dam = new Int32Array(clutchOf.length).fill(-1);
  clutchOf.forEach((clutch, animal) => {
    if (clutch < 0) return;
    sire[animal] = pairSire[clutch] ?? -1;
    dam[animal] = pairDam[clutch] ?? -1;
  });
  return { sire, dam };
}

/** The textbook method compiled, ready to run; see meuwissen-luo.c. */
export class Textbook {
  readonly #folder = mkdtempSync(join(tmpdir(), 'textbook-'));

  private constructor(source: string) {
    // The list of the paper and a heap: which one is faster depends on the pedigree, and the faster one is compared.
    execFileSync('cc', ['-O3', '-march=native', '-o', join(this.#folder, 'list'), source]);
    execFileSync('cc', ['-O3', '-march=native', '-DWITH_HEAP', '-o', join(this.#folder, 'heap'), source]);
  }

  /** Compiles it, or says with null that this machine has no C compiler. */
  static compile(): Textbook | null {
    try {
      execFileSync('cc', ['--version'], { stdio: 'ignore' });
    } catch {
      return null;
    }
    // Seen from the repository's root, where `npm run bench` stands: the compiled bench lies elsewhere.
    return new Textbook(join('tests', 'bench', 'meuwissen-luo.c'));
  }

  /** Hands a pedigree with certain parents over, one row an animal, founders first. */
  give(pedigree: Pedigree): void {
    const { sire, dam } = textbookRows(pedigree);
    const rows = new Int32Array(1 + 2 * sire.length);
    rows[0] = sire.length;
    rows.set(sire, 1);
    rows.set(dam, 1 + sire.length);
    writeFileSync(join(this.#folder, 'rows'), rows);
  }

  /**
   * Runs it once on the pedigree given last.
   *
   * @param limit milliseconds after which it is given up
   * @returns milliseconds without reading the file, and the sum of F over all animals; null if it was given up.
   */
  run(variant: 'list' | 'heap', limit: number): { milliseconds: number; sum: number } | null {
    try {
      const output = execFileSync(join(this.#folder, variant), [join(this.#folder, 'rows')], {
        timeout: Math.ceil(limit),
      });
      const [milliseconds = NaN, sum = NaN] = output.toString().split(' ').map(Number);
      return { milliseconds, sum };
    } catch (error) {
      if ((error as { signal?: string }).signal === 'SIGTERM') return null;
      throw error;
    }
  }

  /** Removes what was compiled and written. */
  remove(): void {
    rmSync(this.#folder, { recursive: true });
  }
}
