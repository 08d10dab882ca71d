import { IdMaker } from './dice.ts';
import type { Animal, Clutch, Draft, Group } from './draft.ts';

/** Ids of everything that the scenario tells of. Asking for one that it never tells of is an error. */
export interface Ids {
  keeper(name: string): string;
  species(name: string): string;
  line(prefix: string): string;
  source(code: string): string;
  group(group: Group): string;
  clutch(clutch: Clutch): string;
  animal(code: string): string;
  /** A fresh id for a row that nothing refers to. */
  fresh(name: string): string;
}

/** Hands out the ids; animals get theirs in the order of birth given. */
export function idsOf(draft: Draft, byBirth: readonly Animal[]): Ids {
  const maker = new IdMaker();
  const made = new Map<string, string>();
  const make = (name: string): void => void made.set(name, maker.next(name));
  for (const name of draft.plan.keepers) make(`keeper ${name}`);
  for (const each of draft.plan.species) make(`species ${each.scientificName}`);
  for (const line of draft.plan.lines) make(`line ${line.prefix}`);
  for (const line of draft.plan.lines) for (const source of line.sources) make(`source ${source.code}`);
  for (const group of draft.groups) make(`group ${group.plan.name}`);
  for (const clutch of draft.clutches) make(`clutch ${clutch.code}`);
  for (const animal of byBirth) make(`animal ${animal.code}`);
  const get = (name: string): string => {
    const id = made.get(name);
    if (id === undefined) throw new Error(`the scenario names what it never tells of: ${name}`);
    return id;
  };
  return {
    keeper: (name) => get(`keeper ${name}`),
    species: (name) => get(`species ${name}`),
    line: (prefix) => get(`line ${prefix}`),
    source: (code) => get(`source ${code}`),
    group: (group) => get(`group ${group.plan.name}`),
    clutch: (clutch) => get(`clutch ${clutch.code}`),
    animal: (code) => get(`animal ${code}`),
    fresh: (name) => maker.next(name),
  };
}
