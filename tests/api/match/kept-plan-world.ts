import type { Response } from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import { expect } from 'vitest';
import type { KeptPlanPairView, KeptPlanView } from '../../../api/match/kept-plans/kept-plan.view.ts';
import { bodyOf } from '../../support/answer.ts';
import type { TestApi } from '../../support/api.ts';
import { Factory, mediumPoisonFrog } from '../../support/factories.ts';

type Fields = Record<string, unknown>;

/** A line with some animals, by the codes that they were made with. */
export interface TestLine {
  readonly id: string;
  readonly speciesId: string;
  readonly ids: Readonly<Record<string, string>>;
}

/** Keeps plans in a register of the tests. */
export class PlanWorld {
  readonly make: Factory;

  constructor(readonly api: TestApi) {
    this.make = new Factory(api.http);
  }

  /** A line of unrelated animals hatched in 2020; `m…` are males. Their codes in the register begin with the name of the line. */
  async line(name: string, codes: readonly string[], by: Readonly<Record<string, Fields>> = {}): Promise<TestLine> {
    const { id: speciesId } = await this.make.species({ ranges: mediumPoisonFrog });
    const { id } = await this.make.line({ speciesId, name });
    const ids: Record<string, string> = {};
    for (const code of codes) {
      const sex = code.startsWith('m') ? 'male' : 'female';
      const animal = { code: `${name} ${code}`, speciesId, lineId: id, sex, hatched: '2020-03-01', ...by[code] };
      ids[code] = (await this.make.individual(animal)).id;
    }
    return { id, speciesId, ids };
  }

  /** Young of a pair, grown by now. */
  async young(line: TestLine, sire: string, dam: string, codes: readonly string[]): Promise<Record<string, string>> {
    const of = (code: string): string => line.ids[code] ?? code;
    const clutch = await this.make.clutchOf(of(sire), of(dam), { laid: '2022-02-10', hatched: codes.length });
    const animals = codes.map((code) => ({ sex: code.startsWith('m') ? 'male' : 'female', hatched: '2022-03-01' }));
    const raised = await this.make.offspring(clutch.id, { animals });
    return Object.fromEntries(codes.map((code, place) => [code, raised[place]?.id ?? '']));
  }

  async keep(line: TestLine, assumptions: Fields = {}, more: Fields = {}, http = this.api.http): Promise<KeptPlanView> {
    const body = { lineId: line.id, name: 'spring', assumptions: { pairings: 2, ...assumptions }, ...more };
    const answer = await http.post('/api/v1/kept-plans').send(body);
    expect(answer.status, answer.text).toBe(201);
    return bodyOf<KeptPlanView>(answer);
  }

  async read({ id }: { readonly id: string }, http = this.api.http): Promise<KeptPlanView> {
    return bodyOf<KeptPlanView>(await http.get(`/api/v1/kept-plans/${id}`).expect(200));
  }

  async accept(
    { id }: { readonly id: string },
    body: Fields,
    http: TestAgent = this.api.http,
    match = '*',
  ): Promise<Response> {
    return http.post(`/api/v1/kept-plans/${id}/pairings`).set('If-Match', match).send(body);
  }

  async decide({ id }: { readonly id: string }, body: Fields, http: TestAgent = this.api.http): Promise<Response> {
    return http.patch(`/api/v1/kept-plans/${id}/pairs`).set('If-Match', '*').send(body);
  }

  async change(path: string, body: Fields, http: TestAgent = this.api.http): Promise<Response> {
    const answer = await http.patch(`/api/v1/${path}`).set('If-Match', '*').send(body);
    expect(answer.status, answer.text).toBe(200);
    return answer;
  }

  async undo(answer: Response, http: TestAgent = this.api.http): Promise<Response> {
    return http.post(`/api/v1/journal/${answer.headers['journal-entry'] ?? ''}/reversal`);
  }

  /** Makes the label of a source disputed, by accepted evidence against a claim. */
  async dispute(sourceId: string): Promise<void> {
    const claim = await this.make.claim({ sourceId });
    const { id } = await this.make.evidence({ claimId: claim.id, bearing: 'contradicts' });
    const registrar = await this.api.addKeeper(`Reviewer of ${id}`, ['registrar']);
    const review = registrar.http.post(`/api/v1/evidence/${id}/review`).set('If-Match', '*');
    await review.send({ verdict: 'accepted', reason: 'The note is genuine.' }).expect(201);
  }
}

/** The pair of a plan that an animal is in. */
export function pairOf({ pairs }: KeptPlanView, animalId: string | undefined): KeptPlanPairView {
  const found = pairs.find(({ male, female }) => [male.animal.id, female.animal.id].includes(animalId ?? ''));
  if (!found) throw new Error('the animal is in no pair of the plan');
  return found;
}

/** Hands an animal over to another keeper. */
export async function keeperOf(api: TestApi, individualId: string, keeperId: string): Promise<void> {
  await api.dataSource.query('update individual set keeper_id = $2 where id = $1', [individualId, keeperId]);
}
