import type { EntityManager } from 'typeorm';
import type { SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { readKnownAnimals, readKnownClutches } from '../knowledge.queries.ts';
import { sameKey, type KnownAnimal, type KnownClutch, type RegisterKnowledge } from '../knowledge.ts';
import { animalKey, animalsOf, clutchKey, sourceKey, type ToldAnimal } from './foreign-keys.ts';
import type { ForeignKind } from './foreign-record.entity.ts';
import type { ForeignCodes } from './foreign-rows.ts';
import { readClutchesOf, readRecognised, recognisedAs, type Recognised } from './recognised.queries.ts';

/** What of a sheet stands in the register already, by the refs of the sheet. */
export interface ForeignStanding {
  readonly animals: ReadonlyMap<string, KnownAnimal>;
  readonly clutches: ReadonlyMap<string, KnownClutch>;
  /** Ids of sources. */
  readonly sources: ReadonlyMap<string, string>;
}

/** Refs of a sheet and by what each is known again; null: by nothing. */
type Keys = ReadonlyMap<string, string | null>;

/**
 * Finds what of a sheet stands in the register already, as far as whoever asks may see it.
 *
 * @param registerId the register that signed it
 * @param named ids of records here by refs of the sheet, as the keeper says
 */
export async function readStanding(
  manager: EntityManager,
  registerId: string,
  sheet: SheetDocument,
  named: ReadonlyMap<string, string>,
): Promise<ForeignStanding> {
  const told = animalsOf(sheet);
  const animalKeys: Keys = new Map([...told].map(([ref, animal]) => [ref, animalKey(animal, sheet.number)]));
  const clutchKeys: Keys = new Map(sheet.clutches.map((clutch) => [clutch.ref, clutchKey(clutch, told)]));
  const sourceKeys: Keys = new Map(sheet.sources.map((source) => [source.ref, sourceKey(source)]));
  const recognised = await readRecognised(manager, registerId, {
    individual: present(animalKeys),
    clutch: present(clutchKeys),
    source: present(sourceKeys),
  });
  const ids = new Map([...idsOf('individual', animalKeys, recognised), ...named]);
  const animals = found(ids, await readKnownAnimals(manager, [...ids.values()]));
  const clutchIds = new Map([
    ...idsOf('clutch', clutchKeys, recognised),
    ...(await clutchesOfKnown(manager, told, animals)),
  ]);
  const clutches = found(clutchIds, await readKnownClutches(manager, [...clutchIds.values()]));
  return { animals, clutches, sources: idsOf('source', sourceKeys, recognised) };
}

/** The clutch of an animal that is known is known, whatever a sheet says of it. */
async function clutchesOfKnown(
  manager: EntityManager,
  told: ReadonlyMap<string, ToldAnimal>,
  animals: ReadonlyMap<string, KnownAnimal>,
): Promise<[string, string][]> {
  const clutchOf = await readClutchesOf(
    manager,
    [...animals.values()].map(({ id }) => id),
  );
  return [...animals].flatMap(([ref, { id }]): [string, string][] => {
    const clutch = told.get(ref)?.clutch ?? null;
    const here = clutchOf.get(id);
    return clutch === null || here === undefined ? [] : [[clutch, here]];
  });
}

const present = (keys: Keys): string[] => [...keys.values()].filter((key) => key !== null);

function idsOf(kind: ForeignKind, keys: Keys, recognised: Recognised): Map<string, string> {
  const ids = new Map<string, string>();
  for (const [ref, key] of keys) {
    const id = key === null ? undefined : recognised.get(recognisedAs(kind, key));
    if (id !== undefined) ids.set(ref, id);
  }
  return ids;
}

/** Records by ref, of those ids of which there is one. */
function found<T>(ids: ReadonlyMap<string, string>, records: ReadonlyMap<string, T>): Map<string, T> {
  const byRef = new Map<string, T>();
  for (const [ref, id] of ids) {
    const record = records.get(id);
    if (record !== undefined) byRef.set(ref, record);
  }
  return byRef;
}

/** What the registry knows, and under the codes of the sheet what of it stands here already. */
export function withStanding(
  knowledge: RegisterKnowledge,
  codes: ForeignCodes,
  sheet: SheetDocument,
  { animals, clutches, sources }: ForeignStanding,
): RegisterKnowledge {
  const told = animalsOf(sheet);
  const byCode = <T>(records: ReadonlyMap<string, T>): Map<string, T> =>
    new Map(
      [...records].map(([ref, record]) => {
        const animal = told.get(ref);
        return [sameKey(animal ? codes.animal(animal) : codes.onSheet(ref)), record];
      }),
    );
  const [animalOf, clutchOf, sourceOf] = [byCode(animals), byCode(clutches), byCode(sources)];
  return {
    ...knowledge,
    animal: (name) => animalOf.get(sameKey(name)) ?? knowledge.animal(name),
    clutch: (code) => clutchOf.get(sameKey(code)) ?? knowledge.clutch(code),
    source: (code) => sourceOf.get(sameKey(code)) ?? knowledge.source(code),
  };
}
