import type { DateBounds } from '../../shared/edtf.ts';
import type { Sex } from '../../shared/vocabulary.ts';
import type { AnimalCells } from './animal-cells.ts';
import type { CodeIndex } from './code-index.ts';
import type { KnownAnimal, RegisterKnowledge } from './knowledge.ts';
import type { SheetTable } from './sheet-table.ts';
import { say } from '../platform/say.ts';

/**
 * An animal that can be a parent, as a number: 0 and up are animals of the sheet, −1 is a frog nobody knows, −2 and down are
 * animals of the registry.
 */
export type ParentNumber = number;

/** The frog nobody knows. */
export const nobody: ParentNumber = -1;

/** The animals that a sheet speaks of: its own, and those of the registry that it names as parents. */
export class AnimalLookup {
  /** Animals of the registry that the sheet names: number −2 is the first. */
  readonly known: KnownAnimal[] = [];
  readonly #numberOfKnown = new Map<string, ParentNumber>();

  constructor(
    private readonly table: SheetTable,
    private readonly cells: AnimalCells,
    private readonly codes: CodeIndex,
    private readonly knowledge: RegisterKnowledge,
  ) {}

  /** The animal that a name means: one of the sheet, else one of the registry; undefined where there is none. */
  find(name: string): ParentNumber | undefined {
    const inSheet = this.codes.find(name);
    if (inSheet !== undefined) return inSheet;
    const known = this.knowledge.animal(name);
    if (known === undefined) return undefined;
    let number = this.#numberOfKnown.get(known.id);
    if (number === undefined) {
      number = -1 - this.known.push(known);
      this.#numberOfKnown.set(known.id, number);
    }
    return number;
  }

  /** The animal of the registry that a number means, undefined for one of the sheet. */
  registered(parent: ParentNumber): KnownAnimal | undefined {
    return parent <= -2 ? this.known[-2 - parent] : undefined;
  }

  /** How to speak of an animal so that a reader finds it. */
  describe(parent: ParentNumber): string {
    const known = this.registered(parent);
    if (known)
      return known.code === null
        ? say`${known.number} of the registry`
        : say`${known.code} (${known.number} of the registry)`;
    return parent < 0
      ? say`an unknown animal`
      : say`${this.table.text('code', parent)} (row ${this.table.row(parent)})`;
  }

  /** The sex of an animal; `unsexed` where nobody knows. */
  sex(parent: ParentNumber): Sex {
    return parent >= 0 ? this.cells.sex(parent) : (this.registered(parent)?.sex ?? 'unsexed');
  }

  /** When an animal hatched, null where that is not recorded. */
  hatched(parent: ParentNumber): DateBounds | null {
    return parent >= 0 ? this.cells.hatched(parent) : (this.registered(parent)?.hatched ?? null);
  }

  /** The rank in time of an animal of the registry. */
  tierOfRegistered(parent: ParentNumber): number {
    return this.registered(parent)?.tier ?? 0;
  }
}
