import type { LineOverTime } from '$lib/api/types.ts';
import { counted, percent, percentRange } from '$lib/ui/figures.ts';
import { dateInWords } from '$shared/date-words.ts';
import type { Sex, Status } from '$shared/vocabulary.ts';
import { word } from '../../words/word.ts';
import type { Lit, LineKin } from './line-kin.ts';
import type { LineLayout } from './line-layout.ts';

/** What sentences are made of. */
export interface ToldLine {
  readonly line: LineOverTime;
  readonly layout: LineLayout;
  readonly kin: LineKin;
}

const sexWords: Record<Sex, string> = { male: word('male'), female: word('female'), unsexed: 'not sexed' };
const statusWords: Record<Status, string> = {
  alive: word('alive'),
  died: word('dead'),
  gone: word('gone'),
  unknown: 'of unknown fate',
};

/** What an animal is called: its code, else its number. */
export function nameIn({ animals }: LineOverTime, animal: number): string {
  return animals.code[animal] ?? animals.number[animal] ?? 'a private animal';
}

export function sexInWords({ animals }: LineOverTime, animal: number): string {
  return sexWords[animals.sex[animal] ?? 'unsexed'];
}

export function statusInWords({ animals }: LineOverTime, animal: number): string {
  return statusWords[animals.status[animal] ?? 'unknown'];
}

/** When an animal began: laid, hatched or arrived, as it is recorded. */
export function beginningInWords({ animals, clutches, sources }: LineOverTime, animal: number): string {
  const laid = clutches.laid[animals.clutch[animal] ?? -1];
  if (laid) return `laid ${dateInWords(laid)}`;
  const hatched = animals.hatched[animal];
  if (hatched) return `hatched ${dateInWords(hatched)}`;
  const source = sources[animals.source[animal] ?? -1];
  if (source) return source.title;
  return (animals.clutch[animal] ?? -1) >= 0 ? 'of a clutch without a date' : 'of unknown origin';
}

/** Inbreeding with its range where the parents are not certain. */
export function inbreedingInWords({ animals, clutches }: LineOverTime, animal: number): string {
  const expected = animals.inbreeding[animal] ?? null;
  if (expected === null) return 'inbreeding not known';
  const clutch = animals.clutch[animal] ?? -1;
  const [least, greatest] = [
    clutches.inbreedingLeast[clutch] ?? expected,
    clutches.inbreedingGreatest[clutch] ?? expected,
  ];
  return least === greatest ? `F ${percent(expected)}` : `F ${percent(expected)}, ${percentRange(least, greatest)}`;
}

/** The possible parents, each with its probability where that is not certain. */
export function parentsInWords({ line, kin }: ToldLine, animal: number): string {
  const parents = kin.parentsOf(animal).map(({ animal: parent, probability }) => {
    const name = nameIn(line, parent);
    return probability < 1 ? `${name} (${percent(probability)})` : name;
  });
  return parents.length === 0 ? 'no known parent' : `parents ${parents.join(', ')}`;
}

/** How many young an animal has in the line, and of how many clutches. */
export function youngInWords({ kin }: ToldLine, animal: number): string {
  const families = kin.familiesBelow(animal);
  if (families.length === 0) return 'no young';
  const young = families.reduce((sum, family) => sum + kin.membersOf(family).length, 0);
  return `${counted(young, ['young', 'young'])} of ${counted(families.length, ['clutch', 'clutches'])}`;
}

/** All of an animal in one line, as the keyboard's place says it. */
export function animalInWords(told: ToldLine, animal: number): string {
  const { line } = told;
  if (line.animals.number[animal] === null)
    return `a private animal; ${parentsInWords(told, animal)}; ${youngInWords(told, animal)}`;
  const other = line.lines[line.animals.line[animal] ?? -1];
  const code = line.animals.code[animal];
  const name =
    code === null || code === undefined ? line.animals.number[animal] : `${code}, ${line.animals.number[animal]}`;
  return [
    `${name}, ${sexInWords(line, animal)}, ${statusInWords(line, animal)}`,
    beginningInWords(line, animal),
    ...(other === undefined ? [] : [`of the line ${other}`]),
    parentsInWords(told, animal),
    inbreedingInWords(line, animal),
    youngInWords(told, animal),
  ].join('; ');
}

/** How much is lit. */
export function litInWords({ ancestors, descendants }: Lit, way: string): string {
  const above = counted(ancestors, ['ancestor', 'ancestors']);
  const below = counted(descendants, ['descendant', 'descendants']);
  if (way === 'ancestors') return `${above} lit`;
  return way === 'young' ? `${below} lit` : `${above} and ${below} lit`;
}

/** The line in one sentence, as the drawing is called. */
export function lineInWords({ line, layout }: Omit<ToldLine, 'kin'>): string {
  const animals = counted(line.members, ['animal', 'animals']);
  const clutches = counted(line.clutches.id.length, ['clutch', 'clutches']);
  const living = line.animals.status.reduce(
    (sum, status, at) => sum + (at < line.members && status === 'alive' ? 1 : 0),
    0,
  );
  if (!layout.isDated) return `${animals} in ${clutches}, none of them dated; ${living} alive`;
  const years = [
    layout.families.y.reduce((a, b) => Math.min(a, b), Infinity),
    layout.families.y.reduce((a, b) => Math.max(a, b), 0),
  ];
  const [from, to] = years.map((y) => Math.floor(layout.firstYear + y / layout.perYear));
  return `${animals} in ${clutches}, ${from} to ${to}; ${living} alive`;
}
