import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Test } from 'supertest';
import type { JournalEntryView } from '../../../api/journal/journal.view.ts';
import type { ClutchView } from '../../../api/register/clutches/clutch.view.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory, trio } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
});

afterAll(() => api.close());

const inSpanish = (request: Test): Test => request.set('Accept-Language', 'es-MX, es;q=0.9, en;q=0.5');
const noId = '00000000-0000-4000-8000-000000000000';

interface Refusal {
  title: string;
  detail: string;
  errors?: { pointer: string; detail: string }[];
}

describe('a reader of Spanish is told in Spanish', () => {
  it('why something is refused, by a sentence with its holes filled in and by each field', async () => {
    const gone = await inSpanish(api.http.get(`/api/v1/clutches/${noId}`)).expect(404);
    expect(gone.body).toMatchObject({
      title: 'No se encontró',
      detail: `No hay ninguna ficha de puesta con el id ${noId}.`,
    });
    expect(gone.headers['vary']).toMatch(/Accept-Language/);
    const wrong = await inSpanish(
      api.http.post('/api/v1/species').send({ scientificName: 'x'.repeat(500), colour: 'red' }),
    ).expect(422);
    const { detail, errors = [] } = wrong.body as Refusal;
    expect(detail).toBe('Algunos campos no se pueden aceptar; cada uno se nombra abajo.');
    expect(Object.fromEntries(errors.map((error) => [error.pointer, error.detail]))).toEqual({
      '/scientificName': 'Este campo debe tener de 3 a 120 caracteres.',
      '/colour': 'Aquí no hay ese campo.',
    });
  });

  it('what a rule of the database says', async () => {
    const { scientificName } = await make.species();
    const again = await inSpanish(api.http.post('/api/v1/species').send({ scientificName })).expect(409);
    expect(again.text).toContain('Esta especie ya está en el registro.');
  });

  it('warnings, titles and what is said within them, while the register keeps English', async () => {
    const { sire, dam } = await trio(make);
    await api.http
      .patch(`/api/v1/individuals/${dam.id}`)
      .set('If-Match', '*')
      .send({ hatched: '2020-11-10' })
      .expect(200);
    const { id, warnings } = await make.clutchOf(sire.id, dam.id, { laid: '2021-04-12', eggs: 7 });
    const said = (await inSpanish(api.http.get(`/api/v1/clutches/${id}`)).expect(200)).body as ClutchView;
    expect(said.title).toBe('puesta de 2021-04-12');
    expect(said.warnings[0]?.detail).toMatch(/^Se hizo cuando su madre \S+ tenía 5 meses; lo habitual es 10 o más/);
    const warning = `/api/v1/clutches/${id}/warnings/young-dam/confirmation`;
    await inSpanish(api.http.post(warning).send({ reason: 'Seen with the eggs.' })).expect(201);
    const read = (await api.http.get(`/api/v1/clutches/${id}`).expect(200)).body as ClutchView;
    expect(read.warnings[0]).toMatchObject({
      detail: warnings[0]?.detail,
      confirmed: { reason: 'Seen with the eggs.' },
    });
  });
});

it('what the journal tells is told in Spanish, with reasons as they were written', async () => {
  const { sire, dam } = await trio(make);
  const { id } = await make.clutchOf(sire.id, dam.id, { laid: '2021-04-12', losses: [{ cause: 'mould', count: 3 }] });
  const dams = [{ individualId: dam.id, reason: 'a letter' }];
  await api.http.patch(`/api/v1/clutches/${id}`).set('If-Match', '*').send({ dams }).expect(200);
  await make.observation({ individualId: dam.id, observedOn: '2024-05-01' });
  const read = await inSpanish(api.http.get('/api/v1/journal?limit=3')).expect(200);
  const [remark, changed, added] = (read.body as { items: JournalEntryView[] }).items;
  expect(remark?.record?.title).toBe('nota de 2024-05-01');
  expect(changed?.record?.title).toBe('puesta de 2021-04-12');
  const told = (entry: JournalEntryView | undefined, field: string) =>
    entry?.changes.find((change) => change.field === field)?.after;
  expect(told(changed, 'parents')).toMatch(/^madre \S+ \S+, 100 % \(a letter\)\npadre \S+ \S+, 100 %$/);
  expect(told(added, 'losses')).toBe('moho: 3');
});

it('what a keeper wrote stays as it is written, even where the service has a sentence like it', async () => {
  const notes = 'Some fields cannot be taken; each is named below.';
  const refused = await api.http.post('/api/v1/species').send({ colour: 'red' }).expect(422);
  expect((refused.body as Refusal).detail).toBe(notes);
  const animal = await make.individual({ notes });
  const read = await inSpanish(api.http.get(`/api/v1/individuals/${animal.id}`)).expect(200);
  expect(read.body).toMatchObject({ notes });
});

it('a reader of any other language is told in English', async () => {
  const answer = await api.http.get(`/api/v1/clutches/${noId}`).set('Accept-Language', 'fi').expect(404);
  expect((answer.body as Refusal).detail).toBe(`There is no clutch with the id ${noId}.`);
});
