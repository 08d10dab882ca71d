import { readFileSync } from 'node:fs';
import type { OpenAPIObject } from '@nestjs/swagger';
import PO from 'pofile';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { isStartingPhrase } from '../../../api/platform/say.ts';
import { startApi, type TestApi } from '../../support/api.ts';
import { Factory, mediumPoisonFrog } from '../../support/factories.ts';

let api: TestApi;
let make: Factory;
/** Where the records are that the test makes. */
const ids: string[] = [];

/** Sentences of the service that have no holes, the shortest first, each with what a reader of Spanish is told. */
const sentences = PO.parse(readFileSync(new URL('../../../api/words/es.po', import.meta.url), 'utf8'))
  .items.map(({ msgid, msgstr }) => ({ english: msgid, spanish: msgstr[0] ?? '' }))
  .filter(({ english, spanish }) => /^\S+ .*[^ ]$/.test(english) && !english.includes('{') && spanish !== english)
  .sort((a, b) => a.english.length - b.english.length)
  // of an animal without a sex the service says itself that it is not known
  .filter(({ english }) => english.endsWith('.') && !english.includes(' sex '));

const placed: { where: string; english: string; spanish: string }[] = [];

/** A sentence of the service that nobody has written yet, to be written into a field. */
function sentence(where: string): string {
  const next = sentences.splice(
    sentences.findIndex(({ english }) => !isStartingPhrase(english)),
    1,
  )[0];
  if (!next) throw new Error('there are no more sentences');
  placed.push({ where, ...next });
  return next.english;
}

/** Texts for fields, all of them sentences of the service. */
const saying = (of: string, ...fields: string[]): Record<string, string> =>
  Object.fromEntries(fields.map((field) => [field, sentence(`${field} of ${of}`)]));

const kept = <R extends { readonly id: string }>(record: R): R => {
  ids.push(record.id);
  return record;
};

beforeAll(async () => {
  api = await startApi();
  make = new Factory(api.http);
  const { id: speciesId } = kept(
    await make.species({
      ...saying('the species', 'scientificName', 'commonName'),
      ranges: mediumPoisonFrog.map((range) => ({ ...range, ...saying('a range', 'source') })),
    }),
  );
  const { id: lineId } = kept(await make.line({ speciesId, ...saying('the line', 'name', 'policy') }));
  const source = kept(
    await make.source({
      ...saying('the source', 'code', 'receivedFrom', 'receivedBy', 'labelAsReceived', 'labelNote', 'notes'),
      permitReferences: [sentence('a permit')],
    }),
  );
  const founder = (sex: string) =>
    make.individual({ speciesId, lineId, sex, sourceId: source.id, ...saying(`the ${sex}`, 'code', 'notes') });
  const [sire, dam] = [kept(await founder('male')), kept(await founder('female'))];
  const pairing = kept(
    await make.pairing({
      ...saying('the pairing', 'name', 'notes'),
      members: [
        { individualId: sire.id, joined: '2020-01-01' },
        { individualId: dam.id, joined: '2020-01-01' },
      ],
    }),
  );
  const clutch = kept(
    await make.clutch({
      ...saying('the clutch', 'code', 'site', 'notes'),
      sires: [{ individualId: sire.id, ...saying('the sire', 'reason') }],
      dams: [{ individualId: dam.id, ...saying('the dam', 'reason') }],
      laid: '2021-04-12',
      eggs: 40,
    }),
  );
  const [young] = await make.offspring(clutch.id);
  if (!young) throw new Error('there is one');
  kept(young);
  kept(await make.observation({ individualId: young.id, ...saying('the remark', 'text') }));
  const claim = kept(
    await make.claim({
      sourceId: source.id,
      ...saying('the claim', 'value', 'statedBy', 'verbatimLocality', 'locality', 'stateProvince', 'notes'),
    }),
  );
  kept(await make.evidence({ claimId: claim.id, ...saying('the evidence', 'reference', 'issuedBy', 'notes') }));
  kept(await make.photograph({ individualId: young.id, ...saying('the photograph', 'notes') }));
  const unknown = kept(await make.individual({ speciesId, lineId, ...saying('the unknown animal', 'code') }));
  kept(await make.acknowledgement({ individualId: unknown.id, ...saying('the acknowledged flag', 'reason') }));
  const warning = `clutches/${clutch.id}/warnings/${clutch.warnings[0]?.code ?? ''}/confirmation`;
  await make.post(warning, saying('the confirmed warning', 'reason'));
  kept(
    await make.post<{ id: string }>('transfers', {
      animals: [unknown.id],
      date: '2024-01-01',
      ...saying('the departure', 'leftTo', 'note'),
    }),
  );
  const gone = await make.individual({ speciesId });
  await api.http
    .post(`/api/v1/individuals/${gone.id}/withdrawal`)
    .set('If-Match', '*')
    .send(saying('the withdrawal', 'reason'))
    .expect(201);
  kept(gone);
  await make.post('links', { kind: 'invitation', ...saying('the link', 'note') });
  await api.http
    .patch(`/api/v1/pairings/${pairing.id}`)
    .set('If-Match', '*')
    .send(saying('the pairing, later', 'name', 'notes'))
    .expect(200);
});

afterAll(() => api.close());

it('what people write is told word for word to a reader of Spanish at every address, even where the service says the same', async () => {
  const { paths } = (await api.stranger.get('/api/openapi.json').expect(200)).body as OpenAPIObject;
  const addresses = Object.entries(paths)
    .filter(([, { get }]) => get)
    .flatMap(([path]) => (path.includes('{') ? ids.map((id) => path.replaceAll(/\{\w+\}/g, id)) : [path]));
  const altered = new Set<string>();
  const told = new Set<string>();
  for (const [at, address] of addresses.entries()) {
    if (at % 20 === 0) await api.dataSource.query('delete from rate_limit');
    const { text, status, type } = await api.http.get(address).set('Accept-Language', 'es');
    if (status !== 200 || !type.endsWith('json')) continue;
    for (const { where, english, spanish } of placed) {
      if (text.includes(JSON.stringify(english).slice(1, -1))) told.add(where);
      if (text.includes(JSON.stringify(spanish).slice(1, -1))) altered.add(`${where} at ${address}: ${spanish}`);
    }
  }
  expect([...altered]).toEqual([]);
  // what nobody is told proves nothing
  expect(placed.map(({ where }) => where).filter((where) => !told.has(where))).toEqual([]);
});
