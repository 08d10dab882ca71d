import type { RegisterKnowledge } from './knowledge.ts';
import { sameKey } from './knowledge.ts';
import type { SheetReport } from './sheet-report.ts';
import type { SheetTable } from './sheet-table.ts';
import { say } from '../platform/say.ts';

/** The animals of a sheet by their code, ignoring case. Of two with the same code the first is found. */
export class CodeIndex {
  readonly #animalOf = new Map<string, number>();
  readonly #table: SheetTable;

  constructor(table: SheetTable) {
    this.#table = table;
    for (let animal = 0; animal < table.length; animal++) {
      const key = sameKey(table.text('code', animal));
      if (key !== '' && !this.#animalOf.has(key)) this.#animalOf.set(key, animal);
    }
  }

  /** The animal with this code, or undefined. */
  find(code: string): number | undefined {
    return this.#animalOf.get(sameKey(code));
  }

  /** All codes of the sheet, as written. */
  *codes(): Generator<string> {
    for (const animal of this.#animalOf.values()) yield this.#table.text('code', animal);
  }
}

/** Refuses rows without a code, with a code that another row has, or that the keeper's registry has already. */
export function checkCodes(
  table: SheetTable,
  codes: CodeIndex,
  knowledge: RegisterKnowledge,
  report: SheetReport,
): void {
  for (let animal = 0; animal < table.length; animal++) {
    const code = table.text('code', animal);
    if (code === '') {
      report.refuse(animal, 'code', say`This animal has no code. Give it one that no other animal of yours has.`);
      continue;
    }
    if (code === '?')
      report.refuse(animal, 'code', say`"?" means an unknown animal and cannot be a code. Choose another.`);
    const first = codes.find(code) ?? animal;
    if (first !== animal)
      report.refuse(
        animal,
        'code',
        say`The code ${code} stands in row ${table.row(first)} too. Each animal needs a code of its own; give one of them another.`,
      );
    const known = knowledge.animalWithCode(code);
    if (known !== undefined && first === animal)
      report.refuse(
        animal,
        'code',
        say`You already have an animal with the code ${code} in the registry: ${known.number}. If it is this one, leave the row out; else choose another code.`,
      );
  }
}
