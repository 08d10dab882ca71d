import type { Response } from 'supertest';
import { seededRandom } from '../../bench/kernel-shapes.ts';
import type { TestApi, TestKeeper } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';

type Edit = () => Promise<Response>;

/** Edits a register at random through the API, as several keepers might: some are refused, none may fail. */
export class RandomEdits {
  /** How many edits of each kind were taken. */
  readonly made = new Map<string, number>();
  readonly #api: TestApi;
  readonly #random: () => number;
  readonly #factory: Factory;
  readonly #seed: number;
  readonly #animals: string[] = [];
  readonly #clutches: string[] = [];
  readonly #entries: string[] = [];
  readonly #imports: string[] = [];
  readonly #claims: string[] = [];
  readonly #evidence: string[] = [];
  readonly #withdrawnSaid: string[] = [];
  /** Brings evidence, which the keeper of the register then reviews. */
  #witness: TestKeeper | null = null;
  #labels: string[] = [];
  #sources: string[] = [];
  #lines: string[] = [];
  #species = '';

  constructor(api: TestApi, seed: number) {
    this.#api = api;
    this.#seed = seed;
    this.#random = seededRandom(seed + 1);
    this.#factory = new Factory(api.http);
  }

  /** Founders of two sources in two lines, and a first generation. */
  async begin(): Promise<void> {
    const tag = `${this.#seed}-${String(this.#random()).slice(2, 8)}`;
    this.#witness = await this.#api.addKeeper(`Witness ${tag}`);
    this.#labels = ['A', 'B'].map((name) => `Line ${name} ${tag}`);
    this.#species = (await this.#factory.species({ scientificName: `Inventus seed${tag}` })).id;
    for (const name of ['A', 'B']) {
      this.#lines.push(
        (await this.#factory.line({ name: `Line ${name} ${tag}`, speciesId: this.#species, labelKind: 'locality' })).id,
      );
      this.#sources.push(
        (await this.#factory.source({ baseKinship: name === 'A' ? 0.1 : 0, labelAsReceived: `Line ${name} ${tag}` }))
          .id,
      );
    }
    for (let founder = 0; founder < 8; founder++) {
      const lineId = this.#lines[founder % 2];
      const { id } = await this.#factory.individual({
        speciesId: this.#species,
        code: `E${tag}-${founder}`,
        lineId,
        ...(founder < 6 ? { sourceId: this.#sources[founder % 2] } : {}),
      });
      this.#animals.push(id);
    }
    for (let clutch = 0; clutch < 3; clutch++) await this.#perform('clutch', () => this.#lay());
    for (let clutch = 0; clutch < 3; clutch++) await this.#perform('young', () => this.#raiseFrom());
  }

  /** Makes so many edits; those refused for a rule count as well. */
  async make(edits: number): Promise<void> {
    const kinds: readonly [number, string, Edit][] = [
      [6, 'clutch', () => this.#lay()],
      [6, 'young', () => this.#raiseFrom()],
      [4, 'parents', () => this.#correctParents()],
      [
        2,
        'base kinship',
        () => this.#change('sources', this.#pick(this.#sources), { baseKinship: this.#pick([0, 0.05, 0.1, 0.25]) }),
      ],
      [4, 'animal', () => this.#change('individuals', this.#pick(this.#animals), this.#animalChange())],
      [2, 'label', () => this.#change('sources', this.#pick(this.#sources), this.#sourceChange())],
      [3, 'claim', () => this.#claim()],
      [
        1,
        'corrected claim',
        () => this.#change('claims', this.#pick(this.#claims), { value: this.#pick(this.#labels) }),
      ],
      [4, 'evidence', () => this.#bringEvidence()],
      [5, 'review', () => this.#review()],
      [2, 'withdrawn claim or evidence', () => this.#withdrawSaid()],
      [2, 'restored claim or evidence', () => this.#restoreSaid()],
      [1, 'withdrawal', () => this.#withdraw()],
      [3, 'merge', () => this.#merge()],
      [3, 'undo', () => this.#undo()],
      [1, 'import', () => this.#import()],
      [1, 'undone import', () => this.#undoImport()],
      [
        1,
        'line',
        () => this.#change('lines', this.#pick(this.#lines), { labelKind: this.#pick(['locality', 'cross']) }),
      ],
    ];
    const total = kinds.reduce((sum, [weight]) => sum + weight, 0);
    for (let edit = 0; edit < edits; edit++) {
      let left = this.#random() * total;
      const chosen = kinds.find(([weight]) => (left -= weight) < 0);
      if (chosen) await this.#perform(chosen[1], chosen[2]);
    }
  }

  /** Lays a clutch and raises three young; gives their ids. */
  async raise(): Promise<string[]> {
    const [sire, dam] = this.#animals;
    const clutch = await this.#factory.clutchOf(sire ?? '', dam ?? '', { laid: '2022' });
    return (await this.#factory.offspring(clutch.id, { count: 3, speciesId: this.#species })).map(({ id }) => id);
  }

  /** Raises young in two clutches, one above the other; gives what corrects a parent of the upper one, its young, and those that descend from it. */
  async layDeep(): Promise<{ corrected: string; correct: () => Promise<void>; descendants: string[] }> {
    const [a = '', b = '', c = ''] = this.#animals;
    const top = await this.#factory.clutchOf(a, b);
    const [young] = await this.#factory.offspring(top.id, { count: 1, speciesId: this.#species });
    const below = await this.#factory.clutchOf(young?.id ?? '', b);
    const youngest = await this.#factory.offspring(below.id, { count: 2, speciesId: this.#species });
    const correct = async (): Promise<void> => {
      const answer = await this.#change('clutches', top.id, { dams: [{ individualId: c }] });
      if (answer.status !== 200) throw new Error(`the correction was refused: ${answer.text}`);
    };
    return { corrected: young?.id ?? '', correct, descendants: youngest.map(({ id }) => id) };
  }

  async #perform(kind: string, edit: Edit): Promise<void> {
    const answer = await edit();
    if (answer.status >= 500) throw new Error(`an edit failed: ${answer.status} ${answer.text}`);
    if (answer.status >= 300) return;
    this.made.set(kind, (this.made.get(kind) ?? 0) + 1);
    const entry = answer.headers['journal-entry'];
    if (entry) this.#entries.push(entry);
  }

  #pick<T>(list: readonly T[]): T {
    return list[Math.floor(this.#random() * list.length)] as T;
  }

  #candidates(): { individualId: string | null; weight: number }[] {
    const count = 1 + Math.floor(this.#random() * 3);
    const ids = new Set(Array.from({ length: count }, () => this.#pick([...this.#animals, null])));
    return [...ids].map((individualId) => ({ individualId, weight: 1 + Math.floor(this.#random() * 3) }));
  }

  #parents(): object {
    if (this.#random() < 0.2) {
      const [a, b, c] = [this.#pick(this.#animals), this.#pick(this.#animals), this.#pick(this.#animals)];
      return { pairs: [a, c].filter((other) => other !== b).map((other) => ({ a: other, b, weight: 1 })) };
    }
    const sires = this.#candidates();
    const dams = this.#candidates().filter(
      ({ individualId }) => !sires.some((sire) => sire.individualId === individualId),
    );
    return { sires, dams };
  }

  async #lay(): Promise<Response> {
    const answer = await this.#api.http.post('/api/v1/clutches').send({ ...this.#parents(), laid: '2021' });
    if (answer.status === 201) this.#clutches.push((answer.body as { id: string }).id);
    return answer;
  }

  async #raiseFrom(): Promise<Response> {
    const answer = await this.#api.http
      .post(`/api/v1/clutches/${this.#pick(this.#clutches)}/offspring`)
      .send({ count: 1 + Math.floor(this.#random() * 3), speciesId: this.#species });
    if (answer.status === 201)
      for (const { id } of (answer.body as { items: { id: string }[] }).items) this.#animals.push(id);
    return answer;
  }

  #correctParents(): Promise<Response> {
    return this.#change('clutches', this.#pick(this.#clutches), this.#parents());
  }

  #animalChange(): object {
    return this.#pick([
      { status: this.#pick(['alive', 'died', 'gone']) },
      { lineId: this.#pick([...this.#lines, null]) },
      { sourceId: this.#pick([...this.#sources, null]), clutchId: null },
      { clutchId: this.#pick(this.#clutches), sourceId: null },
    ]);
  }

  async #change(resource: string, id: string, body: object): Promise<Response> {
    const read = await this.#api.http.get(`/api/v1/${resource}/${id}`);
    return this.#api.http
      .patch(`/api/v1/${resource}/${id}`)
      .set('If-Match', read.headers['etag'] ?? '"1"')
      .send(body);
  }

  #sourceChange(): object {
    return this.#pick([
      { labelAsReceived: this.#pick([...this.#labels, 'Another label', null]) },
      { kind: this.#pick(['wild-collection', 'import', 'purchase']) },
    ]);
  }

  async #claim(): Promise<Response> {
    const about = this.#pick([
      { sourceId: this.#pick(this.#sources) },
      { individualId: this.#pick(this.#animals) },
      { lineId: this.#pick(this.#lines) },
    ]);
    const said = { aspect: this.#pick(['locality', 'trade-name']), value: this.#pick([...this.#labels, 'Elsewhere']) };
    const answer = await this.#api.http.post('/api/v1/claims').send({ ...about, ...said });
    if (answer.status === 201) this.#claims.push((answer.body as { id: string }).id);
    return answer;
  }

  async #bringEvidence(): Promise<Response> {
    if (!this.#witness) throw new Error('begin first');
    const answer = await this.#witness.http.post('/api/v1/evidence').send({
      claimId: this.#pick(this.#claims),
      bearing: this.#pick(['supports', 'supports', 'supports', 'contradicts']),
      kind: this.#pick(['field-note', 'invoice', 'letter', 'appearance']),
      names: this.#pick(['claim', 'claim', 'country']),
      issuedBy: this.#pick(['one dealer', 'another dealer', null]),
      reference: 'a paper',
      ...(this.#random() < 0.2 ? { repeatsId: this.#pick(this.#evidence) } : {}),
    });
    if (answer.status === 201) this.#evidence.push((answer.body as { id: string }).id);
    return answer;
  }

  #review(): Promise<Response> {
    return this.#api.http
      .post(`/api/v1/evidence/${this.#pick(this.#evidence)}/review`)
      .set('If-Match', '*')
      .send({ verdict: this.#pick(['accepted', 'accepted', 'rejected']), reason: 'as the paper says' });
  }

  #said(): string {
    return this.#random() < 0.5 ? `claims/${this.#pick(this.#claims)}` : `evidence/${this.#pick(this.#evidence)}`;
  }

  async #withdrawSaid(): Promise<Response> {
    const said = this.#said();
    const answer = await this.#api.http
      .post(`/api/v1/${said}/withdrawal`)
      .set('If-Match', '*')
      .send({ reason: 'a misunderstanding' });
    if (answer.status === 201) this.#withdrawnSaid.push(said);
    return answer;
  }

  #restoreSaid(): Promise<Response> {
    const said = this.#withdrawnSaid.pop() ?? this.#said();
    return this.#api.http.delete(`/api/v1/${said}/withdrawal`).set('If-Match', '*');
  }

  async #withdraw(): Promise<Response> {
    const id = this.#pick(this.#animals);
    const read = await this.#api.http.get(`/api/v1/individuals/${id}`);
    return this.#api.http
      .post(`/api/v1/individuals/${id}/withdrawal`)
      .set('If-Match', read.headers['etag'] ?? '"1"')
      .send({ reason: 'entered twice' });
  }

  #merge(): Promise<Response> {
    return this.#api.http.post('/api/v1/merges').send({
      keptId: this.#pick(this.#animals),
      duplicateId: this.#pick(this.#animals),
      take: [],
      reason: 'one animal, entered twice',
    });
  }

  #undo(): Promise<Response> {
    return this.#api.http.post(`/api/v1/journal/${this.#pick(this.#entries.slice(-4))}/reversal`).send();
  }

  async #import(): Promise<Response> {
    const tag = `${this.#seed}x${String(this.#random()).slice(2, 8)}`;
    const sheet = `code,species,sire,dam\nI${tag}a,Imported ${tag},,\nI${tag}b,Imported ${tag},,\nI${tag}c,Imported ${tag},I${tag}a,I${tag}b\n`;
    const answer = await this.#api.http.post('/api/v1/imports').set('Content-Type', 'text/csv').send(sheet);
    if (answer.status === 201) this.#imports.push((answer.body as { id: string }).id);
    return answer;
  }

  #undoImport(): Promise<Response> {
    return this.#api.http
      .post(`/api/v1/imports/${this.#imports.at(-1) ?? '00000000-0000-7000-8000-000000000000'}/withdrawal`)
      .send({ reason: 'the wrong sheet' });
  }
}
