import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { IndividualView } from '../../../api/register/individuals/individual.view.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import { faultsOf, type ProvJson } from '../../support/prov-json.ts';
import { setPublicReading } from '../people/route-world.ts';

let api: TestApi;
let keeper: TestKeeper;
let young: IndividualView;
let sire: IndividualView;
let dam: IndividualView;
let hidden: IndividualView;
let ids: { clutch: string; source: string; claim: string; permit: string; letter: string; denial: string };

const provenanceOf = async (who: TestKeeper['http'], id = young.id): Promise<ProvJson> =>
  (await who.get(`/api/v1/individuals/${id}/provenance`).expect(200)).body as ProvJson;

const derivations = (document: ProvJson) =>
  Object.values(document['wasDerivedFrom'] ?? {}).map((statement) => ({
    made: statement['prov:generatedEntity'],
    used: statement['prov:usedEntity'],
    type: (statement['prov:type'] as { $: string }).$,
    probability: (statement['lk:probability'] as { $: string } | undefined)?.$,
  }));

beforeAll(async () => {
  api = await startApi();
  keeper = await api.addKeeper('Kim');
  const registrar = await api.addKeeper('Ria', ['registrar']);
  const make = new Factory(keeper.http);
  const { id: speciesId } = await make.species();
  const source = await make.source({ labelAsReceived: 'Zaruma', visibility: 'public' });
  const founder = { speciesId, sourceId: source.id, visibility: 'public' };
  sire = await make.individual({ ...founder, sex: 'male', hatched: '1993' });
  hidden = await make.individual({ speciesId, sex: 'male', visibility: 'private', code: 'VEILED' });
  dam = await make.individual({ ...founder, sex: 'female' });
  const clutch = await make.clutch({
    laid: '2001-03-04',
    sires: [
      { individualId: sire.id, weight: 0.7 },
      { individualId: hidden.id, weight: 0.3 },
    ],
    dams: [{ individualId: dam.id }],
  });
  young = await make.individual({ speciesId, clutchId: clutch.id, hatched: '2001-03-20', visibility: 'public' });
  const claim = await make.claim({
    sourceId: source.id,
    value: 'Zaruma',
    statedBy: 'the importer',
    decimalLatitude: -3.69133,
    decimalLongitude: -79.61155,
    geodeticDatum: 'EPSG:4326',
    coordinateUncertaintyM: 50,
    locality: 'stream above the town',
  });
  const bring = async (fields: object): Promise<string> => {
    const { id } = await make.evidence({ claimId: claim.id, ...fields });
    const verdict = { verdict: 'accepted', reason: 'looked at' };
    await registrar.http.post(`/api/v1/evidence/${id}/review`).set('If-Match', '*').send(verdict).expect(201);
    return id;
  };
  ids = {
    clutch: clutch.id,
    source: source.id,
    claim: claim.id,
    permit: await bring({ kind: 'export-permit', reference: 'EC-17', issuedBy: 'the ministry' }),
    letter: await bring({ kind: 'letter', reference: 'letter of 1995' }),
    denial: await bring({ kind: 'letter', reference: 'letter of 1996', bearing: 'contradicts' }),
  };
  await make.evidence({ claimId: claim.id, reference: 'not yet reviewed' });
  await setPublicReading(api, true);
});

afterAll(() => api.close());

describe('the provenance of an animal', () => {
  it('is a document of PROV-JSON without a fault, for members and for strangers, founders and young', async () => {
    for (const who of [keeper.http, api.stranger])
      for (const animal of [young, sire, dam]) expect(faultsOf(await provenanceOf(who, animal.id))).toEqual([]);
  });

  it('derives a young from its clutch, and the clutch from each candidate with its probability', async () => {
    const derived = derivations(await provenanceOf(keeper.http));
    const [clutch, made] = [`record:${ids.clutch}`, `record:${young.id}`];
    const parentage = { made: clutch, type: 'lk:Parentage' };
    expect(derived).toEqual(
      expect.arrayContaining([
        { made, used: clutch, type: 'lk:Hatching', probability: undefined },
        { ...parentage, used: `record:${sire.id}`, probability: '0.7' },
        { ...parentage, used: `record:${hidden.id}`, probability: '0.3' },
        { ...parentage, used: `record:${dam.id}`, probability: '1' },
        { made: `record:${sire.id}`, used: `record:${ids.source}`, type: 'lk:Founding', probability: undefined },
      ]),
    );
  });

  it('tells of evidence by its rank, of contradictions, and of no evidence that does not count', async () => {
    const document = await provenanceOf(keeper.http);
    const claim = `record:${ids.claim}`;
    expect(derivations(document).filter(({ made }) => made === claim)).toEqual([
      { made: claim, used: `record:${ids.permit}`, type: 'prov:PrimarySource', probability: undefined },
      { made: claim, used: `record:${ids.letter}`, type: 'prov:Quotation', probability: undefined },
    ]);
    expect(Object.values(document['wasInfluencedBy'] ?? {})).toContainEqual({
      'prov:influencee': claim,
      'prov:influencer': `record:${ids.denial}`,
      'prov:type': { $: 'lk:Contradiction', type: 'prov:QUALIFIED_NAME' },
    });
    expect(document['entity']?.[claim]).toMatchObject({ 'lk:standing': 'disputed', 'prov:value': 'Zaruma' });
    expect(JSON.stringify(document)).not.toContain('not yet reviewed');
  });

  it('gives what happened on a known day its begin and end', async () => {
    const { activity = {} } = await provenanceOf(keeper.http);
    expect(activity[`activity:laying-${ids.clutch}`]).toMatchObject({ 'prov:startTime': '2001-03-04T00:00:00Z' });
    expect(activity[`activity:hatching-${sire.id}`]).toEqual({
      'prov:type': { $: 'lk:Hatching', type: 'prov:QUALIFIED_NAME' },
      'lk:date': '1993',
    });
  });

  it('names people to members alone, and conceals what strangers may not see', async () => {
    const inside = JSON.stringify(await provenanceOf(keeper.http));
    for (const told of ['Kim', 'the importer', 'the ministry', 'EC-17', 'VEILED', '-3.69133', 'stream above'])
      expect(inside).toContain(told);
    const document = await provenanceOf(api.stranger);
    expect(document['agent']).toBeUndefined();
    const outside = JSON.stringify(document);
    for (const told of [
      'Kim',
      'the importer',
      'the ministry',
      'EC-17',
      'VEILED',
      hidden.id,
      '-3.69',
      '-79.61',
      'stream above',
    ])
      expect(outside).not.toContain(told);
    expect(document['entity']?.[`record:${ids.claim}`]).toMatchObject({
      'dwc:decimalLatitude': { $: '-3.65', type: 'xsd:double' },
      'dwc:dataGeneralizations': expect.stringContaining('0.1 degree') as string,
    });
    expect(derivations(document)).toContainEqual({
      made: `record:${ids.clutch}`,
      used: 'concealed:private-1',
      type: 'lk:Parentage',
      probability: '0.3',
    });
  });

  it('is missing where there is no such animal, and goes back as far as it is asked', async () => {
    await api.stranger.get(`/api/v1/individuals/${hidden.id}/provenance`).expect(404);
    await keeper.http.get(`/api/v1/individuals/${young.id}/provenance?generations=13`).expect(422);
  });
});

describe('an animal in the terms of Darwin Core', () => {
  it('has the place of its source, and a bred one none', async () => {
    const founder = await keeper.http.get(`/api/v1/individuals/${sire.number}/occurrence`).expect(200);
    expect(founder.headers['content-type']).toContain('application/ld+json');
    const told = JSON.parse(founder.text) as Record<string, unknown>;
    // the claim of the source is disputed here: it says nothing of the place
    expect(told).toMatchObject({
      '@context': { dwc: 'http://rs.tdwg.org/dwc/terms/' },
      '@id': `urn:uuid:${sire.id}`,
      '@type': 'dwc:Occurrence',
      'dwc:basisOfRecord': 'LivingSpecimen',
      'dwc:degreeOfEstablishment': 'captive',
      'dwc:organismID': sire.number,
      'dwc:eventDate': '1993',
    });
    expect(told).not.toHaveProperty('dwc:decimalLatitude');
    const withdrawal = keeper.http.post(`/api/v1/evidence/${ids.denial}/withdrawal`).set('If-Match', '*');
    await withdrawal.send({ reason: 'of another shipment' }).expect(201);
    const placed = JSON.parse((await keeper.http.get(`/api/v1/individuals/${sire.id}/occurrence`)).text) as object;
    expect(placed).toMatchObject({ 'dwc:decimalLatitude': -3.69133, 'dwc:coordinateUncertaintyInMeters': 50 });
    expect(placed).not.toHaveProperty('dwc:eventDate');
    const bred = JSON.parse((await keeper.http.get(`/api/v1/individuals/${young.id}/occurrence`)).text) as object;
    expect(bred).toMatchObject({ 'dwc:eventDate': '2001-03-20' });
    expect(bred).not.toHaveProperty('dwc:locality');
  });

  it('uses terms of Darwin Core only, and is generalised for strangers, as CSV too', async () => {
    const answer = await api.stranger.get(`/api/v1/individuals/${sire.id}/occurrence?format=csv`).expect(200);
    expect(answer.headers['content-type']).toContain('text/csv');
    const [names = '', values = ''] = answer.text.split('\r\n');
    for (const name of names.split(',')) expect(darwinCore).toContain(name);
    expect(values).toContain(',-3.65,-79.65,EPSG:4326,');
    expect(answer.text).not.toMatch(/-3\.69|-79\.61|stream above|the importer/);
    await keeper.http.get(`/api/v1/individuals/${sire.id}/occurrence?format=xml`).expect(422);
  });
});

/** Names of terms in http://rs.tdwg.org/dwc/terms/, as the list of terms of the standard has them (TDWG): those of Occurrence, Organism, Event, Location, Identification and Taxon that are used here. */
const darwinCore = [
  ...['basisOfRecord', 'dataGeneralizations', 'informationWithheld', 'occurrenceID', 'sex', 'degreeOfEstablishment'],
  ...['organismID', 'organismName', 'eventDate', 'verbatimEventDate', 'eventRemarks', 'locationID', 'countryCode'],
  ...['stateProvince', 'locality', 'verbatimLocality', 'decimalLatitude', 'decimalLongitude', 'geodeticDatum'],
  ...['coordinateUncertaintyInMeters', 'georeferencedBy', 'georeferenceSources', 'georeferenceVerificationStatus'],
  ...['locationAccordingTo', 'locationRemarks', 'scientificName', 'kingdom'],
];
