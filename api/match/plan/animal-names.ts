import type { EntityManager } from 'typeorm';
import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import type { Sex } from '../../../shared/vocabulary.ts';
import type { AnimalRef } from '../../lineage/lineage.view.ts';
import { seen } from '../../people/visibility.ts';
import { privateAnimal, PrivateRecords } from '../../register/private-records.ts';

interface AnimalName {
  readonly id: string;
  readonly number: string;
  readonly code: string | null;
  readonly sex: Sex;
}

/** Names of animals by their ids, as far as whoever asks may see them; of the others no more than that they are there. */
export class AnimalNames {
  readonly #names: ReadonlyMap<string, AnimalName>;
  readonly #concealed = new PrivateRecords();

  private constructor(names: readonly AnimalName[]) {
    this.#names = new Map(names.map((name) => [name.id, name]));
  }

  /** Reads the names of animals, of withdrawn ones too (primary key). */
  static async read(manager: EntityManager, ids: readonly string[]): Promise<AnimalNames> {
    if (ids.length === 0) return new AnimalNames([]);
    return new AnimalNames(
      await manager.query<AnimalName[]>(
        `select i.id, i.number::text, i.code, i.sex from individual i where i.id = any($1::uuid[]) and ${seen('individual', 'i')}`,
        [ids],
      ),
    );
  }

  isSeen(id: string): boolean {
    return this.#names.has(id);
  }

  /** A reference to an animal; numbered within the answer where it may not be seen. */
  refOf(id: string): AnimalRef {
    const name = this.#names.get(id);
    return this.#concealed.animal({
      id,
      number: formatRegistryNumber(name?.number ?? '0'),
      code: name?.code ?? null,
      sex: name?.sex ?? 'unsexed',
      isSeen: name !== undefined,
    });
  }

  /** The name that a reader knows an animal by: its code and number, else its number alone. */
  nameOf(id: string): string {
    const { number, code, isPrivate } = this.refOf(id);
    if (isPrivate) return `${privateAnimal.replace(/^a /, '')} ${this.#concealed.numberOf('individual', id)}`;
    return code === null ? (number ?? '') : `${code} (${number})`;
  }
}
