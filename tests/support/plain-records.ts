import type { DemoClub } from './demo-club.ts';
import { mediumPoisonFrog } from './factories.ts';

/** Records of one keeper of the invented club, made for one test and for nothing else. */
export class PlainRecords {
  private constructor(
    private readonly club: DemoClub,
    private readonly keeper: string,
    private readonly speciesId: string,
  ) {}

  /** @param species scientific name of their own species */
  static async of(club: DemoClub, keeper: string, species: string): Promise<PlainRecords> {
    const { id } = await club.write('species', { scientificName: species, ranges: mediumPoisonFrog }, keeper);
    return new PlainRecords(club, keeper, id);
  }

  /** A male and a female whose codes end in 1 and 2, by their ids. */
  async pair(code: string): Promise<[sire: string, dam: string]> {
    const animal = async (fields: object): Promise<string> =>
      (await this.club.write('individuals', { speciesId: this.speciesId, hatched: '2020', ...fields }, this.keeper)).id;
    return [await animal({ code: `${code}1`, sex: 'male' }), await animal({ code: `${code}2`, sex: 'female' })];
  }

  /** A clutch of nine eggs of a pair, by its id. */
  async clutch(code: string, [sire, dam]: [string, string], fields: object = {}): Promise<string> {
    const parents = { sires: [{ individualId: sire }], dams: [{ individualId: dam }] };
    const body = { code, laid: '2023-04-01', eggs: 9, ...parents, ...fields };
    return (await this.club.write('clutches', body, this.keeper)).id;
  }

  /** Young of a clutch, by their ids. */
  async young(clutchId: string, codes: readonly string[], fields: object = {}): Promise<string[]> {
    const animals = codes.map((code) => ({ code, ...fields }));
    const { items } = await this.club.write<{ items: { id: string }[] }>(
      `clutches/${clutchId}/offspring`,
      { speciesId: this.speciesId, animals },
      this.keeper,
    );
    return items.map(({ id }) => id);
  }

  /** A group of animals that live together since 2021, by its id. */
  async group(name: string, animals: readonly string[]): Promise<string> {
    const members = animals.map((individualId) => ({ individualId, joined: '2021' }));
    return (await this.club.write('pairings', { name, members }, this.keeper)).id;
  }
}
