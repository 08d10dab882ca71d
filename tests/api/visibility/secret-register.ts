import type { ClutchView } from '../../../api/register/clutches/clutch.view.ts';
import type { IndividualItemView } from '../../../api/register/individuals/individual.view.ts';
import type { TestApi, TestKeeper } from '../../support/api.ts';
import { Factory, mediumPoisonFrog } from '../../support/factories.ts';
import { makePlans } from './secret-plans.ts';
import { makeTransfers } from './secret-transfers.ts';

/** Who asks: the keeper of what is private, another keeper, a registrar, and somebody who is not signed in. */
export const askers = ['owner', 'other', 'registrar', 'stranger'] as const;
export type Asker = (typeof askers)[number];

/** A text that only some may come across. */
export interface Secret {
  readonly what: string;
  readonly text: string;
  readonly seenBy: readonly Asker[];
  /** Whether it is the id of a record that the others may not see. */
  readonly isId: boolean;
}

/** A register in which everything that is private says something that stands nowhere else. */
export interface SecretRegister {
  readonly owner: TestKeeper;
  readonly other: TestKeeper;
  readonly secrets: readonly Secret[];
  /** Ids of all records by name. */
  readonly ids: Readonly<Record<string, string>>;
  /** Registry numbers of animals by name. */
  readonly numbers: Readonly<Record<string, string>>;
}

type Record_ = { readonly id: string; readonly number?: string };
type Fields = Record<string, unknown>;

const inPrivate: readonly Asker[] = ['owner', 'registrar'];
const inClub: readonly Asker[] = ['owner', 'other', 'registrar'];

/** Notes down records as they are made, and what must not be told of them. */
export class Ledger {
  readonly secrets: Secret[] = [];
  readonly ids: Record<string, string> = {};
  readonly numbers: Record<string, string> = {};

  keep<R extends Record_>(name: string, record: R, seenBy: readonly Asker[], told: Fields = {}): R {
    this.ids[name] = record.id;
    this.add(`the id of ${name}`, record.id, seenBy, true);
    if (record.number !== undefined) {
      this.numbers[name] = record.number;
      this.add(`the number of ${name}`, record.number, seenBy);
    }
    this.addAll(name, told, seenBy);
    return record;
  }

  /** Every text among the fields, but the words of closed vocabularies and the ids of other records. */
  addAll(name: string, told: Fields, seenBy: readonly Asker[]): void {
    for (const [field, value] of Object.entries(told))
      for (const text of Array.isArray(value) ? (value as unknown[]) : [value])
        if ((typeof text === 'string' && !plainFields.has(field)) || typeof text === 'number')
          this.add(`${field} of ${name}`, String(text), seenBy);
  }

  add(what: string, text: string, seenBy: readonly Asker[], isId = false): void {
    this.secrets.push({ what, text, seenBy, isId });
  }
}

const plainFields = new Set(['sex', 'kind', 'visibility', 'status', 'speciesId', 'lineId', 'sourceId', 'clutchId']);

/** Builds it. Dates are days that no two records share. */
export async function makeSecretRegister(api: TestApi): Promise<SecretRegister> {
  await api.dataSource.query('delete from rate_limit');
  const owner = await api.addKeeper('Anna Verhohlen');
  const other = await api.addKeeper('Benno Nachbar');
  const ledger = new Ledger();
  ledger.add('the name of the owner', owner.name, inClub);
  ledger.add('the name of the other keeper', other.name, inClub);
  const make = new Factory(owner.http);
  const ben = new Factory(other.http);
  const { id: speciesId } = await make.species({ ranges: mediumPoisonFrog });
  const { id: lineId } = await make.line({ speciesId, name: 'Quebrada Honda' });
  const { id: otherLineId } = await make.line({ speciesId, name: 'Rio Oculto' });
  const world: World = { api, make, ben, ledger, speciesId, lineId, otherLineId };
  const founders = await makeFounders(world);
  const young = await makeYoung(world, founders);
  await makeHousing(world, founders, young);
  await makeRemarks(world, founders, young);
  await makeImport(world, owner);
  await makePlans(make, ledger, owner);
  await makeTransfers(api, make, ledger, speciesId);
  return { owner, other, secrets: ledger.secrets, ids: ledger.ids, numbers: ledger.numbers };
}

interface World {
  readonly api: TestApi;
  readonly make: Factory;
  readonly ben: Factory;
  readonly ledger: Ledger;
  readonly speciesId: string;
  readonly lineId: string;
  readonly otherLineId: string;
}

interface Founders {
  readonly source: Record_;
  readonly sire: Record_;
  readonly dam: Record_;
  readonly clubDam: Record_;
}

async function makeFounders({ make, ledger, speciesId, lineId, otherLineId }: World): Promise<Founders> {
  const hiddenSource = {
    kind: 'import',
    code: 'SRC-VEILED',
    date: '1977-03-03',
    receivedFrom: 'Sender Verhuellt',
    receivedBy: 'Empfaenger Verhuellt',
    countryOfExport: 'ZW',
    permitReferences: ['PERMIT-VEILED-1'],
    labelAsReceived: 'Label Verhuellt',
    labelNote: 'label note veiled',
    notes: 'source notes veiled',
  };
  const { countryOfExport, ...told } = hiddenSource;
  const source = await make.source({ ...hiddenSource, visibility: 'private' });
  ledger.keep('the private source', source, inPrivate, told);
  ledger.add('country of the private source', `"${countryOfExport}"`, inPrivate);
  const sender = { receivedFrom: 'Sender Offen', receivedBy: 'Empfaenger Offen' };
  const shown = { kind: 'purchase', date: '2000-02-02', labelAsReceived: 'Quebrada Honda', ...sender };
  const publicSource = await make.source({ ...shown, visibility: 'public' });
  ledger.ids['the public source'] = publicSource.id;
  ledger.addAll('the public source', sender, inClub);
  const founder = async (name: string, seenBy: readonly Asker[], fields: Fields): Promise<Record_> => {
    const { sourceId, visibility, ...said } = fields;
    return ledger.keep(name, await make.individual({ speciesId, sourceId, visibility, ...said }), seenBy, said);
  };
  const hidden = { visibility: 'private', sourceId: source.id, lineId: otherLineId };
  return {
    source,
    sire: await founder('the private sire', inPrivate, {
      ...hidden,
      sex: 'male',
      code: 'SIRE-VEILED',
      hatched: '1999-09-19',
      died: '2011-11-21',
      notes: 'sire notes veiled',
    }),
    dam: await founder('the private dam', inPrivate, {
      ...hidden,
      sex: 'female',
      code: 'DAM-VEILED',
      hatched: '1999-08-17',
    }),
    clubDam: await founder('the club dam', inClub, {
      sourceId: publicSource.id,
      lineId,
      sex: 'female',
      code: 'DAM-OF-CLUB',
      hatched: '2000-05-05',
      notes: 'dam notes for the club',
    }),
  };
}

interface Young {
  readonly privateClutch: ClutchView;
  readonly youngSire: Record_;
  readonly sister: Record_;
  readonly mixedClutch: ClutchView;
  readonly shown: Record_;
  readonly open: Record_;
}

async function makeYoung(world: World, { sire, dam, clubDam }: Founders): Promise<Young> {
  const { make, ledger, speciesId, lineId, otherLineId } = world;
  const animal = async (
    name: string,
    seenBy: readonly Asker[],
    clutch: ClutchView,
    fields: Fields,
  ): Promise<Record_> => {
    const { visibility, ...said } = fields;
    const record = await make.individual({ speciesId, clutchId: clutch.id, visibility, ...said });
    return ledger.keep(name, record, seenBy, said);
  };
  const clutch = async (
    name: string,
    seenBy: readonly Asker[],
    parents: [Record_, Record_],
    fields: Fields,
  ): Promise<ClutchView> =>
    ledger.keep(name, await make.clutchOf(parents[0].id, parents[1].id, fields), seenBy, fields);

  const privateClutch = await clutch('the private clutch', inPrivate, [sire, dam], {
    laid: '2001-07-17',
    code: 'CLUTCH-VEILED',
    site: 'site veiled',
    notes: 'clutch notes veiled',
  });
  const own = { visibility: 'private', lineId: otherLineId };
  const youngSire = await animal('the young private sire', inPrivate, privateClutch, {
    ...own,
    sex: 'male',
    code: 'YOUNG-VEILED',
    hatched: '2001-07-31',
  });
  const sister = await animal('the private sister', inPrivate, privateClutch, {
    ...own,
    sex: 'female',
    hatched: '2001-08-01',
  });
  // too young a sire, so that a warning speaks of him
  const mixedClutch = await make.clutchOf(youngSire.id, clubDam.id, {
    laid: '2001-12-24',
    code: 'CLUTCH-OF-CLUB',
    notes: 'clutch notes for the club',
  });
  ledger.ids['the mixed clutch'] = mixedClutch.id;
  // its code and its day are told to whoever may see its public young
  ledger.addAll('the mixed clutch', { notes: 'clutch notes for the club' }, inClub);
  const line = { lineId };
  const shown = await animal('the club young', inClub, mixedClutch, { ...line, sex: 'female', hatched: '2002-01-07' });
  const open = await make.individual({
    ...line,
    speciesId,
    clutchId: mixedClutch.id,
    code: 'OPEN-1',
    visibility: 'public',
  });
  ledger.ids['the public young'] = open.id;
  ledger.numbers['the public young'] = open.number;
  await animal('the private young', inPrivate, mixedClutch, {
    ...line,
    visibility: 'private',
    code: 'HATCHLING-VEILED',
  });
  // the same dam soon after, so that a warning speaks of that clutch
  const nextClutch = await clutch('the private next clutch', inPrivate, [sire, clubDam], { laid: '2001-12-26' });
  await animal('the young of the next clutch', inPrivate, nextClutch, { ...own, code: 'NEXT-VEILED' });
  const group = await make.clutch({
    laid: '2006-06-06',
    pairs: [
      { a: youngSire.id, b: clubDam.id },
      { a: youngSire.id, b: shown.id },
      { a: sister.id, b: youngSire.id },
    ],
  });
  ledger.keep('the group clutch', group, inClub, {});
  await animal('a young of the group', inClub, group, { ...line, code: 'GROUP-OF-CLUB' });
  return { privateClutch, youngSire, sister, mixedClutch, shown, open };
}

async function makeHousing({ make, ledger, api }: World, founders: Founders, young: Young): Promise<void> {
  const tank = { name: 'Tank Verhuellt', notes: 'tank notes veiled' };
  const members = [
    { individualId: founders.dam.id, joined: '2008-08-18' },
    { individualId: young.sister.id, joined: '2008-08-19' },
  ];
  ledger.keep('the private pairing', await make.pairing({ ...tank, members }), inPrivate, tank);
  const mixed = await make.pairing({
    name: 'Tank of the club',
    members: [
      { individualId: founders.clubDam.id, joined: '2003-03-03' },
      { individualId: young.youngSire.id, joined: '2003-03-30', left: '2004-04-04' },
    ],
  });
  ledger.keep('the mixed pairing', mixed, inClub, { joined: '2003-03-03' });
  ledger.addAll('the stay of the private sire', { joined: '2003-03-30', left: '2004-04-04' }, inPrivate);
  // laid while the private sire lived there, of recorded parents that the housing contradicts
  const laidThere = await make.clutch({
    pairingId: mixed.id,
    laid: '2003-10-10',
    sires: [],
    dams: [{ individualId: young.shown.id }],
  });
  ledger.keep('a clutch of the mixed pairing', laidThere, inClub, {});
  const withdrawn = await make.individual({
    speciesId: (await make.species()).id,
    code: 'GONE-VEILED',
    visibility: 'private',
  });
  ledger.keep('the private withdrawn animal', withdrawn, inPrivate, {
    code: 'GONE-VEILED',
    reason: 'withdrawn veiled',
  });
  await post(api, `individuals/${withdrawn.id}/withdrawal`, { reason: 'withdrawn veiled' }, { 'If-Match': '*' });
}

async function makeRemarks({ make, ben, ledger, api }: World, founders: Founders, young: Young): Promise<void> {
  const remark = async (name: string, seenBy: readonly Asker[], about: Fields, by = make): Promise<void> => {
    const { visibility, individualId, clutchId, sourceId, ...told } = about;
    const record = await by.observation({ visibility, individualId, clutchId, sourceId, ...told });
    ledger.keep(name, record, seenBy, told);
  };
  const clubDam = { individualId: founders.clubDam.id };
  const measured = { visibility: 'private', svlMm: 61.43, massG: 7.319 };
  await remark("the owner's own remark", ['owner'], {
    ...clubDam,
    ...measured,
    text: 'remark veiled',
    observedOn: '2009-09-01',
  });
  await remark(
    "the other's own remark",
    ['other'],
    { ...clubDam, text: 'remark of ben', visibility: 'private', observedOn: '2009-09-02' },
    ben,
  );
  const onHidden = { text: 'remark on a private sire', observedOn: '2009-09-03' };
  await remark('a remark on a private animal', inPrivate, { individualId: founders.sire.id, ...onHidden });
  const onClutch = { text: 'remark on a private clutch', observedOn: '2009-09-04' };
  await remark('a remark on a private clutch', inPrivate, { clutchId: young.privateClutch.id, ...onClutch });
  const onSource = { text: 'remark on a private source', observedOn: '2009-09-05', visibility: 'public' };
  await remark('a remark on a private source', inPrivate, { sourceId: founders.source.id, ...onSource });
  await remark('a remark for the club', inClub, {
    individualId: young.open.id,
    text: 'remark for the club',
    observedOn: '2009-09-06',
  });
  const shown = await make.observation({ individualId: young.open.id, text: 'remark for all', visibility: 'public' });
  ledger.ids['a public remark'] = shown.id;
  await makeClaims(make, ledger, founders);
  await acknowledgeFlags(api, ledger, founders);
  const reason = 'reason veiled';
  await post(api, `clutches/${young.mixedClutch.id}/warnings/young-sire/confirmation`, { reason });
  ledger.add('the reason of a warning that speaks of a private animal', reason, inPrivate);
}

/** A claim is seen with its source, its evidence by members alone, and its exact place by nobody outside. */
async function makeClaims(make: Factory, ledger: Ledger, founders: Founders): Promise<void> {
  const told = { value: 'Claim veiled', statedBy: 'Stater veiled', verbatimLocality: 'Spot veiled' };
  const place = { decimalLatitude: -3.98761, decimalLongitude: -79.20431 };
  const datum = { geodeticDatum: 'EPSG:4326' };
  const about = { aspect: 'locality', sourceId: founders.source.id };
  const claim = await make.claim({ ...about, ...told, ...place, ...datum });
  ledger.keep('the claim of the private source', claim, inPrivate, { ...told, ...place });
  const paper = { reference: 'Paper veiled', issuedBy: 'Issuer veiled' };
  const evidence = await make.evidence({ claimId: claim.id, ...paper });
  ledger.keep('the evidence of the private source', evidence, inPrivate, paper);
  const note = { notes: 'Photographed veiled', takenOn: '1998-08-18' };
  const photograph = await make.photograph({ individualId: founders.sire.id, ...note });
  ledger.keep('the photograph of the private sire', photograph, inPrivate, note);
  const open = await make.source({ visibility: 'public', code: 'OPEN-CLAIMED' });
  const exact = { statedBy: 'Stater open', verbatimLocality: 'Spot open', locality: 'Bank open', notes: 'Note open' };
  const spot = { decimalLatitude: -2.34567, decimalLongitude: -78.65432 };
  const shown = await make.claim({
    aspect: 'locality',
    sourceId: open.id,
    value: 'Open claim',
    ...exact,
    ...spot,
    ...datum,
  });
  ledger.ids['the claim of a public source'] = shown.id;
  for (const [name, value] of Object.entries({ ...exact, ...spot }))
    ledger.add(`the ${name} of a public claim`, String(value), inClub);
  const letter = { reference: 'Letter of the open claim', issuedBy: 'Writer open' };
  const brought = await make.evidence({ claimId: shown.id, ...letter });
  ledger.keep('the evidence of a public source', brought, inClub, letter);
}

/** What a registrar says of a flag is for those who may see the animal, of a line for all members; its causes for nobody else. */
async function acknowledgeFlags(api: TestApi, ledger: Ledger, { sire, clubDam }: Founders): Promise<void> {
  const registrar = new Factory((await api.addKeeper('Acknowledger', ['registrar'])).http);
  const acknowledge = async (name: string, individualId: string, seenBy: readonly Asker[]): Promise<void> => {
    const told = { reason: `Reason of ${name.slice(-12)}` };
    const flag = { individualId, code: 'label-beyond-evidence', ...told };
    ledger.keep(name, await registrar.acknowledgement(flag), seenBy, told);
  };
  await acknowledge('the acknowledged flag of the private sire', sire.id, inPrivate);
  await acknowledge('the acknowledged flag of the club dam', clubDam.id, inClub);
}

async function makeImport({ ledger, api }: World, owner: TestKeeper): Promise<void> {
  const sheet = 'code,species,sex,source\nSHEET-VEILED-1,Inventus tabula,male,SHEET-SOURCE-VEILED\n';
  const answer = await owner.http
    .post('/api/v1/imports?visibility=private')
    .set('Content-Type', 'text/csv')
    .send(sheet);
  if (answer.status !== 201) throw new Error(answer.text);
  const made = answer.body as { id: string };
  ledger.keep('the import', made, inPrivate, { code: 'SHEET-VEILED-1', source: 'SHEET-SOURCE-VEILED' });
  const [animal] = await api.dataSource.query<IndividualItemView[]>(
    `select id from individual where code = 'SHEET-VEILED-1'`,
  );
  if (animal) ledger.keep('the imported animal', { id: animal.id }, inPrivate);
}

async function post(api: TestApi, path: string, body: Fields, headers: Record<string, string> = {}): Promise<void> {
  const answer = await api.http.post(`/api/v1/${path}`).set(headers).send(body);
  if (answer.status !== 201) throw new Error(`POST ${path} answered ${answer.status}: ${answer.text}`);
}

/** Lets strangers read what is public, or not. */
export async function setPublicReading(api: TestApi, on: boolean): Promise<void> {
  await api.dataSource.query('update club set public_reading = $1', [on]);
}
