import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Pedigree } from '../../api/lineage/kernel/pedigree.ts';

/** Milliseconds after which a run is given up: it takes a minute on the widest shape, and longer tells nothing more. */
export const TEXTBOOK_LIMIT = 20_000;

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
  give({ clutchOf, pairSire, pairDam }: Pedigree): void {
    const animals = clutchOf.length;
    const rows = new Int32Array(1 + 2 * animals).fill(-1);
    rows[0] = animals;
    clutchOf.forEach((clutch, animal) => {
      if (clutch < 0) return;
      rows[1 + animal] = pairSire[clutch] ?? -1;
      rows[1 + animals + animal] = pairDam[clutch] ?? -1;
    });
    writeFileSync(join(this.#folder, 'rows'), rows);
  }

  /**
   * Runs it once on the pedigree given last.
   *
   * @returns milliseconds without reading the file, and the sum of F over all animals; null if it took longer than TEXTBOOK_LIMIT.
   */
  run(variant: 'list' | 'heap'): { milliseconds: number; sum: number } | null {
    try {
      const output = execFileSync(join(this.#folder, variant), [join(this.#folder, 'rows')], {
        timeout: TEXTBOOK_LIMIT,
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
