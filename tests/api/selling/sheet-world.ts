import type { PublicSheetView, SheetVerificationView } from '../../../api/selling/sheets/public-sheet.view.ts';
import type { SheetView } from '../../../api/selling/sheets/sheets.view.ts';
import { readSheetDocument, type SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { readPublishedKeys, type SheetKey } from '../../../shared/sheet/sheet-keys.ts';
import type { Response } from 'supertest';
import type TestAgent from 'supertest/lib/agent.js';
import type { TestApi, TestKeeper } from '../../support/api.ts';
import { bodyOf } from '../../support/answer.ts';
import { Factory } from '../../support/factories.ts';

/** A keeper with froglets to sell: two generations bred from two founders of one import, whose label a permit names. */
export interface Seller {
  readonly keeper: TestKeeper;
  readonly make: Factory;
  readonly speciesId: string;
  readonly lineId: string;
  readonly sourceId: string;
  readonly founders: readonly { readonly id: string; readonly number: string }[];
  readonly parents: readonly { readonly id: string; readonly number: string }[];
  readonly clutchId: string;
  readonly froglets: readonly { readonly id: string; readonly number: string }[];
}

let serial = 0;

/** Founds a seller's line: a brother and a sister have three froglets, so that F is a quarter. */
export async function foundSeller(api: TestApi, name = `Seller ${++serial}`): Promise<Seller> {
  const keeper = await api.addKeeper(name);
  const make = new Factory(keeper.http);
  const { id: speciesId } = await make.species({
    scientificName: `Venditus ranae${'abcdefghij'[serial % 10]}${serial}`,
  });
  const label = `Quebrada Sonora ${serial}`;
  const { id: lineId } = await make.line({ speciesId, name: label });
  const source = await make.source({ countryOfExport: 'EC', labelAsReceived: label, date: '1994~' });
  const claim = await make.claim({ sourceId: source.id, value: label });
  const evidence = await make.evidence({ claimId: claim.id, kind: 'export-permit', issuedBy: 'A. Secretname' });
  await api.http
    .post(`/api/v1/evidence/${evidence.id}/review`)
    .set('If-Match', '*')
    .send({ verdict: 'accepted', reason: 'looked at' })
    .expect(201);
  const fields = { speciesId, lineId };
  const [sire, dam] = await make.individuals(
    { ...fields, sex: 'male', sourceId: source.id, code: 'SIRE-CODE', notes: 'a secret note' },
    { ...fields, sex: 'female', sourceId: source.id, code: 'DAM-CODE' },
  );
  if (!sire || !dam) throw new Error('two founders were asked for');
  const first = await make.clutchOf(sire.id, dam.id, { laid: '2019-02-01' });
  const [brother, sister] = await make.offspring(first.id, { count: 2 });
  if (!brother || !sister) throw new Error('two young were asked for');
  const clutch = await make.clutchOf(brother.id, sister.id, { laid: '2021-02-01' });
  const froglets = await make.offspring(clutch.id, { count: 3 });
  return {
    keeper,
    make,
    speciesId,
    lineId,
    sourceId: source.id,
    founders: [sire, dam],
    parents: [brother, sister],
    clutchId: clutch.id,
    froglets,
  };
}

/** Makes a sheet of animals that must be taken. */
export async function issue(http: TestAgent, animals: readonly string[], more: object = {}): Promise<SheetView> {
  const answer = await http.post('/api/v1/provenance-sheets').send({ animals, ...more });
  if (answer.status !== 201) throw new Error(`the sheet was answered ${answer.status}: ${answer.text}`);
  return bodyOf<SheetView>(answer);
}

/** The bytes of a sheet as its keeper downloads them. */
export async function fileOf(http: TestAgent, id: string): Promise<Buffer> {
  const answer = await http.get(`/api/v1/provenance-sheets/${id}/file`).buffer(true).parse(asBytes).expect(200);
  return answer.body as Buffer;
}

/** Takes an answer as the bytes that it is. */
export function asBytes(response: Response, done: (error: Error | null, body: Buffer) => void): void {
  const chunks: Buffer[] = [];
  // a parser is handed the answer while it arrives
  const arriving = response as unknown as NodeJS.ReadableStream;
  arriving.on('data', (chunk: Buffer) => chunks.push(Buffer.from(chunk)));
  arriving.on('end', () => done(null, Buffer.concat(chunks)));
}

/** What a file says. */
export function documentIn(file: Buffer): SheetDocument {
  return readSheetDocument((JSON.parse(file.toString('utf8')) as { sheet: unknown }).sheet);
}

/** The public keys of a register. */
export async function keysOf(api: TestApi): Promise<SheetKey[]> {
  return readPublishedKeys(JSON.parse((await api.stranger.get('/.well-known/jwks.json').expect(200)).text));
}

/** The public page of a sheet, as somebody without an account gets it. */
export async function publicPage(api: TestApi, sheet: Pick<SheetView, 'lookUp'>): Promise<PublicSheetView> {
  return bodyOf<PublicSheetView>(await api.stranger.get(`/api/v1/sheets/${tokenOf(sheet)}`).expect(200));
}

export const tokenOf = ({ lookUp }: Pick<SheetView, 'lookUp'>): string => lookUp.split('/').at(-1) ?? '';

/** What the register says of a file that somebody without an account sends. */
export async function verification(api: TestApi, file: Buffer): Promise<SheetVerificationView> {
  // the test client writes JSON of its own where a type says so
  const answer = await fetch(`${api.url}/api/v1/sheets/verification`, {
    method: 'POST',
    headers: { 'content-type': 'application/jose+json' },
    body: new Uint8Array(file),
  });
  if (answer.status !== 200) throw new Error(`the file was answered ${answer.status}: ${await answer.text()}`);
  return (await answer.json()) as SheetVerificationView;
}
