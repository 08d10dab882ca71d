import { warningsForClutch, warningsForIndividual } from '../register/plausibility.ts';
import type { ParentFacts, RangesFacts, SiblingClutchFacts, Warning } from '../register/warnings/facts.ts';
import type { DateBounds } from '../../shared/edtf.ts';
import { dateBounds } from '../../shared/edtf.ts';
import { breathe } from './breathe.ts';
import type { ParentNumber } from './animal-lookup.ts';
import { nobody } from './animal-lookup.ts';
import type { RegisterKnowledge } from './knowledge.ts';
import type { LineageFacts } from './lineage-checks.ts';
import type { SpeciesOfSheet } from './planned-species.ts';
import type { PlannedClutch } from './planned-clutches.ts';
import type { SheetColumn } from '../../shared/register-sheet.ts';
import type { SheetReport } from './sheet-report.ts';
import { say } from '../platform/say.ts';

type Facts = LineageFacts & SpeciesOfSheet;

/** Warns of what the species profiles find implausible, in the words of the register. New species have no profile yet. */
export async function warnOfImplausible(
  facts: Facts,
  knowledge: RegisterKnowledge,
  report: SheetReport,
): Promise<void> {
  const profiles = new Profiles(facts, knowledge);
  const nearby = new NearbyClutches(facts);
  const today = new Date().toISOString().slice(0, 10);
  const parentsOf = facts.clutches.map((clutch) => profiles.parentsOf(clutch));
  const laidOf = facts.clutches.map(({ laid, existing }) =>
    laid === '' ? (existing?.laid ?? null) : dateBounds(laid),
  );
  for (const [number, clutch] of facts.clutches.entries()) {
    if (clutch.existing !== null) continue;
    const counts = { eggs: null, hatched: null, lost: 0, young: 0 };
    const warnings = warningsForClutch({
      ...counts,
      laid: laidOf[number] ?? null,
      parents: parentsOf[number] ?? [],
      nearbyOfDam: nearby.before(number),
    });
    for (const warning of warnings) report.warn(clutch.first, columnFor(warning, clutch), warning.detail);
  }
  for (let animal = 0; animal < facts.table.length; animal++) {
    if (animal % animalsABreath === 0) await breathe();
    const number = facts.clutchOf[animal] ?? -1;
    const { dates } = facts.cells;
    const { speciesId, lineId, line, ranges } = profiles.ofAnimal(animal);
    const warnings = warningsForIndividual({
      speciesId,
      lineId,
      line,
      ranges,
      sex: facts.cells.sex(animal),
      sexBasis: null,
      sexedOn: null,
      status: facts.cells.status(animal),
      hatched: dates.bounds('hatched', animal),
      hatchedText: facts.table.text('hatched', animal) || null,
      outOfWater: dates.bounds('outOfWater', animal),
      died: dates.bounds('died', animal),
      laid: laidOf[number] ?? null,
      parents: parentsOf[number] ?? [],
      measurements: [],
      today,
    });
    for (const warning of warnings) report.warn(animal, columnFor(warning, facts.clutches[number]), warning.detail);
  }
}

/** How many animals are looked at before others get a turn. */
const animalsABreath = 10_000;

const columnOfField: Readonly<Record<string, SheetColumn>> = {
  laid: 'laid',
  hatched: 'hatched',
  outOfWater: 'outOfWater',
  died: 'died',
  status: 'status',
  speciesId: 'species',
  lineId: 'line',
  clutch: 'clutch',
};

function columnFor(warning: Warning, clutch: PlannedClutch | undefined): SheetColumn {
  const [field = ''] = warning.fields;
  if (field !== 'parents') return columnOfField[field] ?? 'code';
  return clutch && clutch.group.length > 0 ? 'parents' : clutch?.dams.length === 0 ? 'sire' : 'dam';
}

/** What the register's warnings want to know of the animals of a sheet. */
class Profiles {
  readonly #ranges: readonly RangesFacts[];

  constructor(
    private readonly facts: Facts,
    knowledge: RegisterKnowledge,
  ) {
    this.#ranges = facts.speciesIds.map((id) => (id === null ? {} : knowledge.ranges(id)));
    this.knownRanges = (id) => knowledge.ranges(id);
  }

  private readonly knownRanges: (speciesId: string) => RangesFacts;

  ofAnimal(animal: number): { speciesId: string; lineId: string | null; line: string | null; ranges: RangesFacts } {
    const species = this.facts.speciesOf[animal] ?? -1;
    const number = this.facts.lineOf[animal] ?? -1;
    const line = this.facts.lines[number];
    return {
      speciesId: this.facts.speciesIds[species] ?? `species ${species} of the sheet`,
      lineId: line ? (line.id ?? `line ${number} of the sheet`) : null,
      line: line?.name ?? null,
      ranges: this.#ranges[species] ?? {},
    };
  }

  parentsOf({ sires, dams, group }: PlannedClutch): ParentFacts[] {
    const parents: ParentFacts[] = [];
    const add = (role: ParentFacts['role'], parent: ParentNumber): void => {
      if (parent !== nobody) parents.push(this.#parent(role, parent));
    };
    for (const { parent } of sires) add('sire', parent);
    for (const { parent } of dams) add('dam', parent);
    for (const { parent } of group) add('either', parent);
    return parents;
  }

  #parent(role: ParentFacts['role'], parent: ParentNumber): ParentFacts {
    const known = this.facts.animals.registered(parent);
    if (known) {
      const { speciesId, lineId, line, hatched, died } = known;
      return {
        name: known.code ?? known.number,
        role,
        speciesId,
        lineId,
        line,
        hatched,
        died,
        ranges: this.knownRanges(speciesId),
      };
    }
    const { dates } = this.facts.cells;
    return {
      name: this.facts.table.text('code', parent),
      role,
      hatched: dates.bounds('hatched', parent),
      died: dates.bounds('died', parent),
      ...this.ofAnimal(parent),
    };
  }
}

/** How many clutches before one are looked at: those laid weeks earlier make no warning. */
const mostNearby = 3;

/** The clutches of the same certain dam that were laid shortly before one, by the order of laying. */
class NearbyClutches {
  readonly #before = new Map<number, SiblingClutchFacts[]>();

  constructor({ clutches, table }: Facts) {
    const byDam = new Map<ParentNumber, { number: number; title: string; laid: DateBounds }[]>();
    for (const [number, clutch] of clutches.entries()) {
      const [dam] = clutch.dams;
      const laid = clutch.laid === '' ? null : dateBounds(clutch.laid);
      if (!dam || clutch.dams.length > 1 || dam.parent === nobody || laid === null) continue;
      const title = clutch.code === '' ? say`clutch of row ${table.row(clutch.first)}` : say`clutch ${clutch.code}`;
      const others = byDam.get(dam.parent);
      if (others) others.push({ number, title, laid });
      else byDam.set(dam.parent, [{ number, title, laid }]);
    }
    for (const laidByOne of byDam.values()) {
      laidByOne.sort((a, b) => compare(a.laid.earliest ?? '', b.laid.earliest ?? ''));
      for (const [place, { number }] of laidByOne.entries())
        if (place > 0) this.#before.set(number, laidByOne.slice(Math.max(0, place - mostNearby), place));
    }
  }

  before(clutch: number): readonly SiblingClutchFacts[] {
    return this.#before.get(clutch) ?? [];
  }
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
