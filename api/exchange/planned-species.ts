import type { PedigreeOrder } from '../lineage/kernel/order.ts';
import type { AnimalLookup } from './animal-lookup.ts';
import type { LineageFacts } from './lineage-checks.ts';
import type { RegisterKnowledge } from './knowledge.ts';
import { sameKey } from './knowledge.ts';
import type { SheetReport } from './sheet-report.ts';
import { say } from '../platform/say.ts';

/** The species and lines of a sheet, each once, spelled as the first row that has it. */
export interface SpeciesOfSheet {
  readonly species: readonly string[];
  /** For each species its id in the registry, null where it is new. */
  readonly speciesIds: readonly (string | null)[];
  /** For each animal its species. */
  readonly speciesOf: Int32Array;
  readonly lines: readonly { readonly species: number; readonly name: string; readonly id: string | null }[];
  /** For each animal its line, −1 where it has none. */
  readonly lineOf: Int32Array;
}

/** Stands where nobody said the species. It can be changed with the animal at any time. */
const speciesNotRecorded = say`Species not recorded`;

/**
 * Finds the species and line of each animal. One without a species has that of its candidate parents where they share one,
 * else the only one of the whole sheet, else `speciesNotRecorded`; somebody is told how many those are.
 */
export function planSpecies(
  facts: LineageFacts,
  order: PedigreeOrder,
  knowledge: RegisterKnowledge,
  report: SheetReport,
): SpeciesOfSheet {
  const names = new SpeciesNames();
  const speciesOf = Int32Array.from(facts.clutchOf, (_, animal) => names.number(facts.table.text('species', animal)));
  const unnamed = speciesOf.reduce((count, species) => count + (species < 0 ? 1 : 0), 0);
  if (unnamed > 0) fillIn(facts, order, names, speciesOf, report);
  const known = names.list.map((name) => knowledge.species(name));
  known.forEach((species, number) => {
    if (species?.isWithdrawn)
      report.refuse(speciesOf.indexOf(number), 'species', withdrawn('species', names.list[number] ?? ''));
  });
  const speciesIds = known.map((species) => species?.id ?? null);
  return { species: names.list, speciesOf, speciesIds, ...planLines(facts, speciesOf, speciesIds, knowledge, report) };
}

class SpeciesNames {
  readonly list: string[] = [];
  readonly #numberOf = new Map<string, number>();

  /** The number of a name, −1 of an empty one. */
  number(name: string): number {
    if (name === '') return -1;
    const key = sameKey(name);
    let number = this.#numberOf.get(key);
    if (number === undefined) {
      number = this.list.push(name) - 1;
      this.#numberOf.set(key, number);
    }
    return number;
  }
}

function fillIn(
  facts: LineageFacts,
  order: PedigreeOrder,
  names: SpeciesNames,
  speciesOf: Int32Array,
  report: SheetReport,
): void {
  inherit(facts, order, names, speciesOf);
  const only = names.list.length === 1 ? (names.list[0] ?? '') : speciesNotRecorded;
  const left = speciesOf.reduce((count, species) => count + (species < 0 ? 1 : 0), 0);
  if (left === 0) return;
  const first = speciesOf.indexOf(-1);
  report.warn(
    first,
    'species',
    only === speciesNotRecorded
      ? `${left} animals have no species, this one first. They are recorded as "${speciesNotRecorded}" until you say what they are.`
      : say`${left} animals have no species, this one first. They are taken as ${only}, the only species of all others.`,
  );
  const number = names.number(only);
  for (const [animal, species] of speciesOf.entries()) if (species < 0) speciesOf[animal] = number;
}

/** Gives young without a species that of their parents, parents first. */
function inherit(
  { clutches, clutchOf, animals, table }: LineageFacts,
  order: PedigreeOrder,
  names: SpeciesNames,
  speciesOf: Int32Array,
): void {
  const unnamedYoung = new Map<number, number[]>();
  for (let animal = 0; animal < table.length; animal++) {
    const clutch = clutchOf[animal] ?? -1;
    if (clutch < 0 || (speciesOf[animal] ?? -1) >= 0) continue;
    const young = unnamedYoung.get(clutch);
    if (young) young.push(animal);
    else unnamedYoung.set(clutch, [animal]);
  }
  for (const clutch of order.clutches) {
    const young = unnamedYoung.get(clutch);
    const planned = clutches[clutch];
    if (young === undefined || planned === undefined) continue;
    const found = new Set<number>();
    if (planned.existing?.species != null) found.add(names.number(planned.existing.species));
    for (const candidates of [planned.sires, planned.dams, planned.group])
      for (const { parent } of candidates) found.add(speciesOfParent(parent, speciesOf, animals, names));
    found.delete(-1);
    const [shared] = found;
    if (found.size === 1 && shared !== undefined) for (const animal of young) speciesOf[animal] = shared;
  }
}

function speciesOfParent(parent: number, speciesOf: Int32Array, animals: AnimalLookup, names: SpeciesNames): number {
  if (parent >= 0) return speciesOf[parent] ?? -1;
  return names.number(animals.registered(parent)?.species ?? '');
}

const withdrawn = (what: string, name: string): string =>
  say`The ${what} "${name}" was withdrawn from the registry. Restore it there, or write another ${what}.`;

function planLines(
  { table }: LineageFacts,
  speciesOf: Int32Array,
  speciesIds: readonly (string | null)[],
  knowledge: RegisterKnowledge,
  report: SheetReport,
): Pick<SpeciesOfSheet, 'lines' | 'lineOf'> {
  const lines: { species: number; name: string; id: string | null }[] = [];
  const numberOf = new Map<string, number>();
  const lineOf = Int32Array.from(speciesOf, (species, animal) => {
    const name = table.text('line', animal);
    if (name === '') return -1;
    const key = `${species} ${sameKey(name)}`;
    let number = numberOf.get(key);
    if (number === undefined) {
      const speciesId = speciesIds[species] ?? null;
      const known = speciesId === null ? undefined : knowledge.line(speciesId, name);
      if (known?.isWithdrawn) report.refuse(animal, 'line', withdrawn('line', name));
      number = lines.push({ species, name, id: known?.id ?? null }) - 1;
      numberOf.set(key, number);
    }
    return number;
  });
  return { lines, lineOf };
}

/** Refuses names of species that are too short to be one. */
export function checkSpecies({ table }: Pick<LineageFacts, 'table'>, report: SheetReport): void {
  for (let animal = 0; animal < table.length; animal++) {
    const name = table.text('species', animal);
    if (name !== '' && name.length < 3)
      report.refuse(
        animal,
        'species',
        say`"${name}" is too short for a species. Write its scientific name, such as Epipedobates anthonyi.`,
      );
  }
}
