import { expect } from 'vitest';
import type supertest from 'supertest';
import type { ClutchView } from '../../../api/register/clutches/clutch.view.ts';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import type { MergeComparisonView, MergeView } from '../../../api/register/merges/merge.view.ts';
import type { TestApi } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';

type Fields = Record<string, unknown>;
type Named = Readonly<Record<'id', string>>;

/** A registrar who meets one species again and again, and finds animals that were recorded twice. */
export class Registrar {
  readonly factory: Factory;
  private species: string | null = null;

  constructor(readonly api: TestApi) {
    this.factory = new Factory(api.http);
  }

  /** The species of all animals that `twice` makes. */
  async speciesId(): Promise<string> {
    return (this.species ??= (await this.factory.species()).id);
  }

  /** Two records of one male frog. */
  async twice(kept: Fields = {}, duplicate: Fields = {}): Promise<[IndividualView, IndividualView]> {
    const speciesId = await this.speciesId();
    const make = (fields: Fields): Promise<IndividualView> =>
      this.factory.individual({ speciesId, sex: 'male', ...fields });
    return [await make(kept), await make(duplicate)];
  }

  /** Asks for a merging. */
  post(kept: Named, duplicate: Named, fields: Fields = {}): supertest.Test {
    return this.api.http
      .post('/api/v1/merges')
      .send({ keptId: kept.id, duplicateId: duplicate.id, take: [], reason: 'same spots', ...fields });
  }

  /** Makes a merging, which must be taken. */
  async merge(kept: Named, duplicate: Named, fields: Fields = {}): Promise<MergeView> {
    const answer = await this.post(kept, duplicate, fields);
    expect(answer.status, answer.text).toBe(201);
    return answer.body as MergeView;
  }

  undo(id: string): supertest.Test {
    return this.api.http.delete(`/api/v1/merges/${id}`);
  }

  async compare(kept: Named, duplicate: Named): Promise<MergeComparisonView> {
    const query = `kept=${kept.id}&duplicate=${duplicate.id}`;
    return (await this.api.http.get(`/api/v1/merges/comparison?${query}`).expect(200)).body as MergeComparisonView;
  }

  async animal({ id }: Named): Promise<IndividualView> {
    return (await this.api.http.get(`/api/v1/individuals/${id}`).expect(200)).body as IndividualView;
  }

  async clutch({ id }: Named): Promise<ClutchView> {
    return (await this.api.http.get(`/api/v1/clutches/${id}`).expect(200)).body as ClutchView;
  }

  change(kind: string, { id }: Named, body: Fields): supertest.Test {
    return this.api.http.patch(`/api/v1/${kind}/${id}`).set('If-Match', '*').send(body);
  }

  /** The whole register as the database has it; what only counts or ranks changes aside. */
  async wholeRegister(): Promise<unknown> {
    const state: Record<string, unknown> = {};
    for (const table of tables)
      state[table] = await this.api.dataSource.query(
        `select to_jsonb(r) - array['version', 'updated_at', 'tier', 'clutch_tier', 'individual_tier', 'a_tier', 'b_tier'] as row
         from ${table} r order by id`,
      );
    return state;
  }
}

const tables = [
  'individual',
  'clutch',
  'clutch_candidate',
  'clutch_pair',
  'pairing',
  'pairing_member',
  'observation',
  'confirmed_warning',
  'claim',
  'evidence',
  'photograph',
  'flag_acknowledgement',
];
