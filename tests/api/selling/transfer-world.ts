import type { Response } from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import { expect } from 'vitest';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import type { TransferView } from '../../../api/selling/transfers/transfer.view.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { bodyOf } from '../../support/answer.ts';
import { Factory } from '../../support/factories.ts';

/** A club with three keepers without roles, of whom Anna gives and Ben receives if nothing else is said. */
export class TransferWorld {
  readonly api: TestApi;
  readonly anna: TestKeeper;
  readonly ben: TestKeeper;
  readonly clara: TestKeeper;
  /** Makes records of Anna. */
  readonly make: Factory;

  private constructor(api: TestApi, [anna, ben, clara]: readonly [TestKeeper, TestKeeper, TestKeeper]) {
    this.api = api;
    [this.anna, this.ben, this.clara] = [anna, ben, clara];
    this.make = new Factory(anna.http);
  }

  static async found(): Promise<TransferWorld> {
    const api = await startApi();
    return new TransferWorld(api, [
      await api.addKeeper('Anna'),
      await api.addKeeper('Ben'),
      await api.addKeeper('Clara'),
    ]);
  }

  /** Makes records of another keeper than Anna. */
  of({ http }: TestKeeper): Factory {
    return new Factory(http);
  }

  /** An animal of another keeper than Anna, of a species of its own. */
  async animalOf(keeper: TestKeeper, fields: Record<string, unknown> = {}): Promise<IndividualView> {
    return this.of(keeper).individual({ speciesId: (await this.make.species()).id, code: null, ...fields });
  }

  offer(body: object, http: TestAgent = this.anna.http): Promise<Response> {
    return http.post('/api/v1/transfers').send({ to: this.ben.id, ...body });
  }

  async offered(body: object): Promise<TransferView> {
    return taken(await this.offer(body));
  }

  async left(body: object): Promise<TransferView> {
    return taken(await this.anna.http.post('/api/v1/transfers').send({ leftTo: null, ...body }));
  }

  step(http: TestAgent, id: string, what: string, body: object = {}, match = '*'): Promise<Response> {
    return http.post(`/api/v1/transfers/${id}/${what}`).set('If-Match', match).send(body);
  }

  async accepted(id: string, body: object = {}): Promise<TransferView> {
    return taken(await this.step(this.ben.http, id, 'acceptance', body));
  }

  async animal(id: string, http: TestAgent = this.anna.http): Promise<IndividualView> {
    return bodyOf<IndividualView>(await http.get(`/api/v1/individuals/${id}`).expect(200));
  }

  async change(id: string, fields: object, http: TestAgent = this.anna.http): Promise<void> {
    await http.patch(`/api/v1/individuals/${id}`).set('If-Match', '*').send(fields).expect(200);
  }

  /** Undoes what an answer tells of. */
  undo(answer: Response, http: TestAgent): Promise<Response> {
    return http.post(`/api/v1/journal/${answer.headers['journal-entry']}/reversal`);
  }
}

function taken(answer: Response): TransferView {
  expect(answer.status, answer.text).toBe(201);
  return bodyOf<TransferView>(answer);
}
