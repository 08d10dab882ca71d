import type { AnimalLookup, ParentNumber } from './animal-lookup.ts';
import { nobody } from './animal-lookup.ts';
import { NearMisses } from './near-miss.ts';
import { readCandidates } from './parent-cell.ts';
import type { SheetReport } from './sheet-report.ts';
import type { SheetTable } from './sheet-table.ts';
import { say } from '../platform/say.ts';

/** A candidate parent of a clutch. */
export interface Candidate {
  readonly parent: ParentNumber;
  /** Above 0, at most 1; those of one side sum to 1. */
  readonly probability: number;
}

/** The columns that name parents. */
export type ParentColumn = 'sire' | 'dam' | 'parents';

/** A cell of parents as understood. Empty candidates: that side is unknown. */
export interface ParentCell {
  readonly candidates: readonly Candidate[];
  readonly faults: readonly string[];
}

const emptyCell: ParentCell = { candidates: [], faults: [] };

/** Reads the cells of parents and finds the animals they name; each different text is read once. */
export class ParentCells {
  readonly #read = { side: new Map<number, ParentCell>(), group: new Map<number, ParentCell>() };
  readonly #nearMisses: NearMisses;

  /** @param codes the codes of the sheet, for suggestions */
  constructor(
    private readonly table: SheetTable,
    private readonly animals: AnimalLookup,
    codes: () => Iterable<string>,
  ) {
    this.#nearMisses = new NearMisses(codes);
  }

  /** The candidates of a cell, none where it is empty, says only `?` or cannot be understood. */
  candidates(column: ParentColumn, animal: number): readonly Candidate[] {
    return this.#cell(column, animal).candidates;
  }

  /** Refuses a cell that cannot be understood. */
  check(column: ParentColumn, animal: number, report: SheetReport): void {
    for (const fault of this.#cell(column, animal).faults) report.refuse(animal, column, fault);
  }

  #cell(column: ParentColumn, animal: number): ParentCell {
    const number = this.table.textNumber(column, animal);
    if (number === 0) return emptyCell;
    const read = column === 'parents' ? this.#read.group : this.#read.side;
    let cell = read.get(number);
    if (cell === undefined) {
      cell = this.#understand(this.table.text(column, animal), column === 'parents');
      read.set(number, cell);
    }
    return cell;
  }

  #understand(text: string, isGroup: boolean): ParentCell {
    const written = readCandidates(text, (name) => this.animals.find(name) !== undefined);
    const faults = [...written.faults];
    const found: { parent: ParentNumber; weight: number | null }[] = [];
    for (const { name, weight } of written.candidates) {
      const parent = name === '?' ? nobody : this.animals.find(name);
      if (parent === undefined) faults.push(this.#unknown(name));
      else if (found.some((other) => other.parent === parent))
        faults.push(say`${name} is named twice. Name each candidate once.`);
      else found.push({ parent, weight });
    }
    if (isGroup) faults.push(...groupFaults(written.candidates.length, found));
    if (faults.length > 0) return { candidates: [], faults };
    if (found.length === 1 && found[0]?.parent === nobody) return emptyCell;
    const sum = found.reduce((total, { weight }) => total + (weight ?? 1), 0);
    return { candidates: found.map(({ parent, weight }) => ({ parent, probability: (weight ?? 1) / sum })), faults };
  }

  #unknown(name: string): string {
    const near = this.#nearMisses.near(name);
    const meant = near.length > 0 ? say` Did you mean ${near.join(' or ')}?` : '';
    return say`${name.slice(0, 80)} is neither in this file nor in the registry.${meant} Add a row for it, correct the code, or write ? for an unknown parent.`;
  }
}

function groupFaults(written: number, found: readonly { parent: ParentNumber; weight: number | null }[]): string[] {
  const faults: string[] = [];
  if (written === 1) faults.push(say`A group has at least two animals. Name the others, or use sire and dam.`);
  if (found.some(({ parent }) => parent === nobody))
    faults.push(
      say`In this column ? cannot stand: any two of the animals named may be the pair. Use sire and dam for an unknown parent.`,
    );
  if (found.some(({ weight }) => weight !== null))
    faults.push(say`In this column all pairs are equally likely. Leave the weights out, or use sire and dam.`);
  return faults;
}
