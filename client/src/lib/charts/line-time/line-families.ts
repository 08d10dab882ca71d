import type { LineOverTime } from '$lib/api/types.ts';
import { decimalYear } from '../ancestors/event-times.ts';

/** What a family of the drawing is: the young of a clutch, the founders of a source, or one animal whose beginning is not told. */
export type FamilyKind = 'clutch' | 'source' | 'lone';

/** Days from laying to hatching that a clutch without a laying date is set back by, as years. */
const EGG_YEARS = 14 / 365;
/** A date that leaves less than this open, in years, stands as it is. */
const FIRM_YEARS = 0.2;

/** When a family began, as far as it is recorded, in decimal years. */
export interface Dating {
  /** The middle of what the date may mean; null where nothing is recorded. */
  readonly year: number | null;
  readonly from: number | null;
  readonly to: number | null;
  /** Whether the record names the day or nearly so. */
  readonly isFirm: boolean;
}

export interface Family {
  readonly id: string;
  readonly kind: FamilyKind;
  /** Place of the clutch or source in the answer; of the animal where it is alone. */
  readonly place: number;
  /** Places of the young or founders, in the order in which they are drawn. */
  readonly animals: readonly number[];
  readonly dating: Dating;
}

/** A possible parent of a clutch. */
export interface FamilyLink {
  /** Place of the parent in the answer. */
  readonly animal: number;
  /** Place of the clutch's family in `families`. */
  readonly family: number;
  /** Above 0, at most 1. */
  readonly probability: number;
  readonly role: 'sire' | 'dam' | 'either';
}

/** A line as families and who stands above them; the same whatever the order of the answer. */
export interface LineFamilies {
  readonly families: readonly Family[];
  /** Family of each animal, by its place in the answer. */
  readonly familyOf: Int32Array;
  /** Sorted by family, then by parent. */
  readonly links: readonly FamilyLink[];
}

/** Puts the animals of a line into families, in the order of their ids. */
export function lineFamilies(line: LineOverTime): LineFamilies {
  const groups = new Map<string, { kind: FamilyKind; place: number; animals: number[] }>();
  line.animals.id.forEach((id, animal) => {
    const clutch = line.animals.clutch[animal] ?? -1;
    const source = line.animals.source[animal] ?? -1;
    const [kind, place, key]: [FamilyKind, number, string] =
      clutch >= 0
        ? ['clutch', clutch, line.clutches.id[clutch] ?? '']
        : source >= 0 && isOfLine(line, animal)
          ? ['source', source, line.sources[source]?.id ?? '']
          : ['lone', animal, id];
    const group = groups.get(key) ?? { kind, place, animals: [] };
    group.animals.push(animal);
    groups.set(key, group);
  });
  const families = [...groups]
    .sort(([one], [other]) => inOrder(one, other))
    .map(([id, { kind, place, animals }]): Family => {
      animals.sort((one, other) => byNumber(line, one, other));
      return { id, kind, place, animals, dating: datingOf(line, kind, place, animals) };
    });
  const familyOf = new Int32Array(line.animals.id.length).fill(-1);
  families.forEach(({ animals }, at) => animals.forEach((animal) => (familyOf[animal] = at)));
  return { families, familyOf, links: linksOf(line, families) };
}

/** Whether an animal belongs to the line itself: neither to another line nor kept private. */
export function isOfLine({ animals }: LineOverTime, animal: number): boolean {
  return (animals.line[animal] ?? -1) < 0 && animals.number[animal] !== null;
}

function linksOf({ parents, animals }: LineOverTime, families: readonly Family[]): FamilyLink[] {
  const familyOfClutch = new Map(families.flatMap(({ kind, place }, at) => (kind === 'clutch' ? [[place, at]] : [])));
  const links = parents.clutch.flatMap((clutch, at): FamilyLink[] => {
    const family = familyOfClutch.get(clutch);
    if (family === undefined) return [];
    const [animal, probability] = [parents.animal[at] ?? -1, parents.probability[at] ?? 0];
    return animal < 0 ? [] : [{ animal, family, probability, role: parents.role[at] ?? 'either' }];
  });
  const idOf = ({ animal }: FamilyLink): string => animals.id[animal] ?? '';
  return links.sort((one, other) => one.family - other.family || inOrder(idOf(one), idOf(other)));
}

function datingOf(line: LineOverTime, kind: FamilyKind, place: number, animals: readonly number[]): Dating {
  const { clutches, sources } = line;
  if (kind === 'clutch') {
    const laid = dating(clutches.earliest[place], clutches.latest[place]);
    if (laid.year !== null) return laid;
    const hatched = ofAnimals(line, animals);
    const back = (year: number | null): number | null => (year === null ? null : year - EGG_YEARS);
    return { ...hatched, year: back(hatched.year), from: back(hatched.from), to: back(hatched.to) };
  }
  if (kind === 'source') {
    const arrived = dating(sources[place]?.earliest, sources[place]?.latest);
    if (arrived.year !== null) return arrived;
  }
  return ofAnimals(line, animals);
}

/** The date of hatching that tells most of some animals: the narrowest, of equally narrow ones the first. */
function ofAnimals({ animals: { earliest, latest } }: LineOverTime, animals: readonly number[]): Dating {
  const width = ({ from, to }: Dating): number => (from === null || to === null ? 1000 : to - from);
  const told = animals
    .map((animal) => dating(earliest[animal], latest[animal]))
    .filter(({ year }) => year !== null)
    .sort((one, other) => width(one) - width(other) || (one.year ?? 0) - (other.year ?? 0));
  return told[0] ?? { year: null, from: null, to: null, isFirm: false };
}

function dating(earliest: string | null | undefined, latest: string | null | undefined): Dating {
  const [from, to] = [decimalYear(earliest), decimalYear(latest)];
  if (from === null && to === null) return { year: null, from, to, isFirm: false };
  const year = from === null ? (to as number) : to === null ? from : (from + to) / 2;
  return { year, from, to, isFirm: from !== null && to !== null && to - from < FIRM_YEARS };
}

function byNumber({ animals }: LineOverTime, one: number, other: number): number {
  const number = (animal: number): number => parseInt(animals.number[animal] ?? '', 10) || Infinity;
  const [a, b] = [number(one), number(other)];
  return a === b ? inOrder(animals.id[one] ?? '', animals.id[other] ?? '') : a - b;
}

export function inOrder(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
