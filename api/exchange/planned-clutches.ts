import type { ParentCells, Candidate } from './parent-cells.ts';
import type { KnownClutch, RegisterKnowledge } from './knowledge.ts';
import { sameKey } from './knowledge.ts';
import type { SheetReport } from './sheet-report.ts';
import type { SheetTable } from './sheet-table.ts';
import { say } from '../platform/say.ts';

/** A clutch as rows of a sheet tell it. */
export interface PlannedClutch {
  /** The keeper's code, empty where there is none. */
  readonly code: string;
  /** The animal whose row told of it first. */
  readonly first: number;
  /** The clutch of the registry whose young these are, or null. */
  readonly existing: KnownClutch | null;
  /** EDTF, empty where not recorded. */
  laid: string;
  /** Candidate sires; none: unknown. */
  sires: readonly Candidate[];
  /** Candidate dams; none: unknown. */
  dams: readonly Candidate[];
  /** The animals of a group of which any two may be the pair, all pairs equally likely; then there are no sires and dams. */
  group: readonly Candidate[];
}

/** The clutches of a sheet, and which animal hatched from which. */
export interface ClutchesOfSheet {
  readonly clutches: readonly PlannedClutch[];
  /** For each animal its clutch, −1 where it has none. */
  readonly clutchOf: Int32Array;
}

/**
 * Groups the animals of a sheet into clutches. Rows with the same clutch code are clutch-mates; a cell that one of them leaves
 * empty is taken from the first that has it. Without a code, rows with the same single known sire, the same single known dam
 * and the same date of laying (else of hatching) are clutch-mates. Any other row with a parent is a clutch of its own.
 */
export function planClutches(
  table: SheetTable,
  cells: ParentCells,
  knowledge: RegisterKnowledge,
  report: SheetReport,
): ClutchesOfSheet {
  const grouping = new ClutchGrouping(table, cells, knowledge, report);
  const clutchOf = new Int32Array(table.length).fill(-1);
  for (let animal = 0; animal < table.length; animal++) clutchOf[animal] = grouping.clutchOf(animal);
  return { clutches: grouping.clutches, clutchOf };
}

class ClutchGrouping {
  readonly clutches: PlannedClutch[] = [];
  readonly #byCode = new Map<string, number>();
  readonly #byParentsAndDate = new Map<string, number>();

  constructor(
    private readonly table: SheetTable,
    private readonly cells: ParentCells,
    private readonly knowledge: RegisterKnowledge,
    private readonly report: SheetReport,
  ) {}

  clutchOf(animal: number): number {
    const code = this.table.text('clutch', animal);
    if (code !== '') return this.#coded(animal, code);
    const sires = this.cells.candidates('sire', animal);
    const dams = this.cells.candidates('dam', animal);
    const group = this.cells.candidates('parents', animal);
    if (sires.length + dams.length + group.length === 0) return -1;
    const key = this.#keyOf(animal, sires, dams, group);
    const mates = key === null ? undefined : this.#byParentsAndDate.get(key);
    if (mates !== undefined) return mates;
    const clutch = this.#begin(animal, '', null);
    if (key !== null) this.#byParentsAndDate.set(key, clutch);
    return clutch;
  }

  /** What uncoded clutch-mates share, null where a parent or the date is missing or uncertain. */
  #keyOf(
    animal: number,
    sires: readonly Candidate[],
    dams: readonly Candidate[],
    group: readonly Candidate[],
  ): string | null {
    const [sire] = sires;
    const [dam] = dams;
    if (!sire || !dam || sires.length > 1 || dams.length > 1 || group.length > 0) return null;
    const laid = this.table.textNumber('laid', animal);
    const hatched = this.table.textNumber('hatched', animal);
    if (laid === 0 && hatched === 0) return null;
    return `${sire.parent} ${dam.parent} ${laid > 0 ? `laid ${laid}` : `hatched ${hatched}`}`;
  }

  #coded(animal: number, code: string): number {
    const key = sameKey(code);
    const known = this.#byCode.get(key);
    if (known === undefined) {
      const clutch = this.#begin(animal, code, this.knowledge.clutch(code) ?? null);
      this.#byCode.set(key, clutch);
      this.#refuseNewParents(animal, this.clutches[clutch]);
      return clutch;
    }
    const clutch = this.clutches[known];
    if (clutch) {
      this.#refuseNewParents(animal, clutch);
      this.#join(animal, clutch);
    }
    return known;
  }

  #begin(animal: number, code: string, existing: KnownClutch | null): number {
    const group = this.cells.candidates('parents', animal);
    const hasGroup = group.length > 0;
    return (
      this.clutches.push({
        code,
        first: animal,
        existing,
        laid: this.table.text('laid', animal),
        sires: hasGroup ? [] : this.cells.candidates('sire', animal),
        dams: hasGroup ? [] : this.cells.candidates('dam', animal),
        group,
      }) - 1
    );
  }

  /** Young may be added to a clutch of the registry; what is recorded of it is not changed by a sheet. */
  #refuseNewParents(animal: number, clutch: PlannedClutch | undefined): void {
    if (!clutch?.existing) return;
    for (const column of ['sire', 'dam', 'parents', 'laid'] as const)
      if (this.table.textNumber(column, animal) !== 0)
        this.report.refuse(
          animal,
          column,
          say`The clutch ${clutch.code} is already in the registry. Leave sire, dam, parents and laid empty to add young to it, or give a new clutch another code.`,
        );
  }

  /** Holds a further row of a coded clutch against the rows before, and takes from it what they left empty. */
  #join(animal: number, clutch: PlannedClutch): void {
    const sires = this.cells.candidates('sire', animal);
    const dams = this.cells.candidates('dam', animal);
    const group = this.cells.candidates('parents', animal);
    const laid = this.table.text('laid', animal);
    if (group.length > 0 && clutch.sires.length + clutch.dams.length > 0) this.#disagree(animal, 'parents', clutch);
    else if (clutch.group.length > 0 && sires.length + dams.length > 0)
      this.#disagree(animal, sires.length > 0 ? 'sire' : 'dam', clutch);
    else {
      clutch.group = this.#merged(animal, 'parents', clutch, clutch.group, group);
      clutch.sires = this.#merged(animal, 'sire', clutch, clutch.sires, sires);
      clutch.dams = this.#merged(animal, 'dam', clutch, clutch.dams, dams);
    }
    if (clutch.laid === '') clutch.laid = laid;
    else if (laid !== '' && laid !== clutch.laid) this.#disagree(animal, 'laid', clutch);
  }

  #merged(
    animal: number,
    column: 'sire' | 'dam' | 'parents',
    clutch: PlannedClutch,
    before: readonly Candidate[],
    now: readonly Candidate[],
  ): readonly Candidate[] {
    if (before.length === 0) return now;
    if (now.length > 0 && !areSame(before, now)) this.#disagree(animal, column, clutch);
    return before;
  }

  #disagree(animal: number, column: 'sire' | 'dam' | 'parents' | 'laid', clutch: PlannedClutch): void {
    const said = this.table.text(column, animal);
    this.report.refuse(
      animal,
      column,
      say`Rows of the clutch ${clutch.code} disagree: here it is ${said}, from row ${this.table.row(clutch.first)} on it was otherwise. Clutch-mates have the same parents and the same date of laying; correct one, or give this animal another clutch code.`,
    );
  }
}

function areSame(a: readonly Candidate[], b: readonly Candidate[]): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  return a.every(({ parent, probability }) => {
    const other = b.find((candidate) => candidate.parent === parent);
    return other !== undefined && Math.abs(other.probability - probability) < 1e-9;
  });
}
