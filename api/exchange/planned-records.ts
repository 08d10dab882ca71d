import type { Visibility } from '../../shared/vocabulary.ts';
import { newId } from '../platform/ids.ts';
import { storedDate } from '../platform/dates.ts';
import type { ParentNumber } from './animal-lookup.ts';
import { nobody } from './animal-lookup.ts';
import type { CopyValue } from './copy-rows.ts';
import { notesOf } from './kept-notes.ts';
import type { Candidate } from './parent-cells.ts';
import { sourceValues } from './planned-sources.ts';
import type { SheetColumn } from '../../shared/register-sheet.ts';
import type { SheetPlan } from './sheet-plan.ts';

type Rows = Generator<readonly CopyValue[]>;

/** The records that a plan makes, as rows for COPY, table by table. Ids are given when it is made. */
export class PlannedRecords {
  readonly #speciesIds: string[];
  readonly #lineIds: string[];
  readonly #sourceIds: string[];
  readonly #clutchIds: string[];
  readonly #animalIds: string[];

  constructor(
    private readonly plan: SheetPlan,
    private readonly keeperId: string,
    private readonly importId: string,
    private readonly visibility: Visibility,
  ) {
    this.#speciesIds = plan.speciesIds.map((id) => id ?? newId());
    this.#lineIds = plan.lines.map(({ id }) => id ?? newId());
    this.#sourceIds = plan.sources.map(({ existing }) => existing ?? newId());
    this.#clutchIds = plan.clutches.map(({ existing }) => existing?.id ?? newId());
    this.#animalIds = Array.from({ length: plan.table.length }, newId);
  }

  /** For `speciesTarget`. */
  *species(): Rows {
    for (const [number, name] of this.plan.species.entries())
      if (this.plan.speciesIds[number] === null)
        yield [this.#speciesIds[number] ?? null, this.importId, this.keeperId, name];
  }

  /** For `lineTarget`. */
  *lines(): Rows {
    for (const [number, { species, name, id }] of this.plan.lines.entries())
      if (id === null)
        yield [this.#lineIds[number] ?? null, this.importId, this.keeperId, this.#speciesIds[species] ?? null, name];
  }

  /** For `sourceTarget`. */
  *sources(): Rows {
    for (const [number, source] of this.plan.sources.entries()) {
      if (source.existing !== null) continue;
      const { kind, date, baseKinship, countryOfExport, label, labelNote } = sourceValues(source);
      const head = [this.#sourceIds[number] ?? null, this.importId, this.keeperId, this.visibility];
      yield [
        ...head,
        source.code || null,
        kind,
        ...dateValues(date ?? ''),
        countryOfExport,
        label,
        labelNote,
        baseKinship,
      ];
    }
  }

  /** For `clutchTarget`. */
  *clutches(): Rows {
    for (const [number, { existing, code, laid }] of this.plan.clutches.entries())
      if (existing === null)
        yield [
          this.#clutchIds[number] ?? null,
          this.importId,
          this.keeperId,
          code || null,
          ...dateValues(laid),
          this.plan.tiers.ofClutch[number] ?? 1,
        ];
  }

  /** For `individualTarget`, in the order of the file, so that registry numbers follow it. */
  *individuals(): Rows {
    const { table, cells, clutchOf, sourceOf, tiers, speciesOf, lineOf } = this.plan;
    const dates = new DateValues(this.plan);
    for (let animal = 0; animal < table.length; animal++) {
      const clutch = clutchOf[animal] ?? -1;
      yield [
        this.#animalIds[animal] ?? null,
        this.importId,
        this.keeperId,
        this.visibility,
        table.text('code', animal),
        this.#speciesIds[speciesOf[animal] ?? -1] ?? null,
        this.#lineIds[lineOf[animal] ?? -1] ?? null,
        cells.sex(animal),
        this.#sourceIds[sourceOf[animal] ?? -1] ?? null,
        this.#clutchIds[clutch] ?? null,
        clutch < 0 ? null : (tiers.ofClutch[clutch] ?? null),
        tiers.ofAnimal[animal] ?? 0,
        ...dates.of('hatched', animal),
        ...dates.of('outOfWater', animal),
        ...dates.of('died', animal),
        cells.status(animal),
        notesOf(table, clutchOf, animal) || null,
      ];
    }
  }

  /** For `candidateTarget`. */
  *candidates(): Rows {
    for (const [number, { existing, sires, dams }] of this.plan.clutches.entries()) {
      if (existing !== null) continue;
      for (const sire of sires) yield this.#candidate(number, 'sire', sire);
      for (const dam of dams) yield this.#candidate(number, 'dam', dam);
    }
  }

  /** For `pairTarget`. */
  *pairs(): Rows {
    for (const [number, { existing, group }] of this.plan.clutches.entries()) {
      if (existing !== null) continue;
      const count = (group.length * (group.length - 1)) / 2;
      for (const [place, first] of group.entries())
        for (const second of group.slice(place + 1)) yield this.#pair(number, first.parent, second.parent, 1 / count);
    }
  }

  #candidate(clutch: number, role: 'sire' | 'dam', { parent, probability }: Candidate): readonly CopyValue[] {
    const who = parent === nobody ? [null, null] : [this.#idOf(parent), this.#tierOf(parent)];
    return [newId(), this.#clutchIds[clutch] ?? null, this.plan.tiers.ofClutch[clutch] ?? 1, role, ...who, probability];
  }

  /** The database keeps the two of a pair in the order of their ids, so that no pair can stand there twice. */
  #pair(clutch: number, one: ParentNumber, other: ParentNumber, probability: number): readonly CopyValue[] {
    const [a, b] = this.#idOf(one) < this.#idOf(other) ? [one, other] : [other, one];
    const head = [newId(), this.#clutchIds[clutch] ?? null, this.plan.tiers.ofClutch[clutch] ?? 1];
    return [...head, this.#idOf(a), this.#tierOf(a), this.#idOf(b), this.#tierOf(b), probability];
  }

  #idOf(parent: ParentNumber): string {
    return (parent >= 0 ? this.#animalIds[parent] : this.plan.animals.registered(parent)?.id) ?? '';
  }

  #tierOf(parent: ParentNumber): number {
    return (parent >= 0 ? this.plan.tiers.ofAnimal[parent] : this.plan.animals.tierOfRegistered(parent)) ?? 0;
  }
}

export const speciesTarget = 'species (id, import_id, keeper_id, scientific_name)';
export const lineTarget = 'line (id, import_id, keeper_id, species_id, name)';
export const sourceTarget = `source (id, import_id, keeper_id, visibility, code, kind, date, date_earliest, date_latest,
  country_of_export, label_as_received, label_note, base_kinship)`;
export const clutchTarget = 'clutch (id, import_id, keeper_id, code, laid, laid_earliest, laid_latest, tier)';
export const individualTarget = `individual (id, import_id, keeper_id, visibility, code, species_id, line_id, sex, source_id, clutch_id, clutch_tier, tier,
  hatched, hatched_earliest, hatched_latest, out_of_water, out_of_water_earliest, out_of_water_latest,
  died, died_earliest, died_latest, status, notes)`;
export const candidateTarget =
  'clutch_candidate (id, clutch_id, clutch_tier, role, individual_id, individual_tier, probability)';
export const pairTarget = 'clutch_pair (id, clutch_id, clutch_tier, a_id, a_tier, b_id, b_tier, probability)';

type StoredDateValues = readonly [string | null, string | null, string | null];

function dateValues(text: string): StoredDateValues {
  const { text: edtf, earliest, latest } = storedDate(text === '' ? null : text);
  return [edtf, earliest, latest];
}

/** Dates of animals as the database holds them; a sheet has few different ones. */
class DateValues {
  readonly #of = new Map<number, StoredDateValues>();

  constructor(private readonly plan: SheetPlan) {}

  of(column: SheetColumn, animal: number): StoredDateValues {
    const number = this.plan.table.textNumber(column, animal);
    let values = this.#of.get(number);
    if (values === undefined) {
      values = dateValues(this.plan.table.text(column, animal));
      this.#of.set(number, values);
    }
    return values;
  }
}
