import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { AtRiskListView, AtRiskView } from '../../../api/match/new-blood/at-risk.view.ts';
import { newId } from '../../../api/platform/ids.ts';
import { bodyOf, having, textWith, type ProblemBody } from '../../support/answer.ts';
import { AnimalsByCode } from '../../support/animals-by-code.ts';
import { startApi, type TestApi, type TestKeeper } from '../../support/api.ts';
import { Factory, mediumPoisonFrog } from '../../support/factories.ts';

let api: TestApi;
let other: TestKeeper;
let third: TestKeeper;
let make: Factory;
let speciesId: string;
let lineId: string;
let lastLine: string;
const animals = new AnimalsByCode();
const { idOf, codeOf } = animals;

const atRisk = async (query = '', http = api.http): Promise<AtRiskListView> =>
  bodyOf<AtRiskListView>(await http.get(`/api/v1/match/at-risk?${query}`).expect(200));
/** What it is in the words of these tests: a line by its name, a source by its label, a founder by its code. */
const nameOf = ({ line, beginning }: AtRiskView): string =>
  line?.name ?? (beginning?.founder ? codeOf(beginning.founder.id) : (beginning?.source?.label ?? 'nothing'));
const carriersOf = ({ carriers }: AtRiskView): string[] => carriers.map(({ animal }) => codeOf(animal.id));
const find = (view: AtRiskListView, name: string): AtRiskView => {
  const found = view.items.find((item) => nameOf(item) === name);
  if (!found) throw new Error(`${name} is not at risk; those are ${view.items.map(nameOf).join(', ')}`);
  return found;
};

async function add(code: string, fields: Record<string, unknown>, by = make): Promise<void> {
  await animals.add(by, { code, speciesId, lineId, hatched: '2020-03-01', ...fields });
}

async function young(sires: string[], dam: string, sexes: Record<string, string>, by = make): Promise<void> {
  const clutch = await by.clutch({
    laid: '2022-02-10',
    hatched: 5,
    sires: sires.map((sire) => ({ individualId: idOf(sire) })),
    dams: [{ individualId: idOf(dam) }],
  });
  await animals.raise(
    by,
    clutch.id,
    Object.entries(sexes).map(([code, sex]) => ({ code, sex, hatched: '2022-03-01' })),
  );
}

/**
 * Four dead founders of two shipments. Of the first shipment many live; of the second one grandchild of one founder, half of whose sire is
 * uncertain, and nobody of the other founder.
 */
beforeAll(async () => {
  api = await startApi();
  other = await api.addKeeper('Other keeper');
  third = await api.addKeeper('Third keeper');
  make = new Factory(api.http);
  ({ id: speciesId } = await make.species({ ranges: mediumPoisonFrog }));
  ({ id: lineId } = await make.line({ speciesId, name: 'Quebrada Inventada' }));
  ({ id: lastLine } = await make.line({ speciesId, name: 'Rio Ultimo' }));
  const first = await make.source({ labelAsReceived: 'first shipment' });
  const second = await make.source({ labelAsReceived: 'second shipment' });
  const dead = { status: 'died', died: '2023-01-01' };
  await add('a', { sex: 'male', sourceId: first.id, ...dead });
  await add('b', { sex: 'female', sourceId: first.id, ...dead });
  await add('c', { sex: 'male', sourceId: second.id, ...dead });
  await add('d', { sex: 'female', sourceId: second.id, ...dead });
  await young(['a'], 'b', { 'son of a': 'male', 'daughter of a': 'female', 'second son': 'male' });
  await young(['a', 'c'], 'b', { 'perhaps of c': 'female' });
  await add('last of its line', { sex: 'female', lineId: lastLine }, new Factory(other.http));
  await add('old', { sex: 'male', hatched: '1980-01-01', lineId: lastLine });
});
beforeEach(() => api.dataSource.query('delete from rate_limit'));
afterAll(() => api.close());

describe('about to be lost', () => {
  it('is the line with one animal that may breed, told with who it is and who keeps it', async () => {
    const line = find(await atRisk(), 'Rio Ultimo');
    expect(line).toMatchObject({ kind: 'line', breeders: 1, living: 2, onlySex: 'female', kept: null });
    expect(carriersOf(line)).toEqual(['last of its line', 'old']);
    const [last, old] = line.carriers;
    expect(last).toMatchObject({ keeper: 'Other keeper', keeperId: other.id, mayBreed: true, proven: false });
    expect(last?.age?.least).toBeGreaterThan(40);
    expect(old).toMatchObject({ mayBreed: false, warnings: [textWith('older')], age: having({}) });
    expect(line.why[0]).toContain('One living animal');
  });

  it('is a source that lives on in one animal, with how much of it that is, at least and as expected', async () => {
    const source = find(await atRisk(`lineId=${lineId}`), 'second shipment');
    expect(source).toMatchObject({
      kind: 'source',
      breeders: 1,
      genomes: 0.25,
      founders: { recorded: 2, left: 1 },
      // one of two candidate sires: one of his two genes is there as often as not, and none of the other founder's
      kept: { expected: 0.125, standardError: 0, isExact: true },
    });
    expect(source.carriers).toEqual([
      having({ animal: having({ id: idOf('perhaps of c') }), share: { expected: 0.25, least: 0 } }),
    ]);
  });

  it('says of which founders nothing is left, and names a founder only where its source does not tell all', async () => {
    const view = await atRisk();
    const source = find(view, 'second shipment');
    expect(source.founders).toEqual({ recorded: 2, left: 1 });
    expect(source.why).toEqual([textWith('One living animal'), textWith('Of its 2 founders 1 left nothing')]);
    expect(view.lost).toEqual({ lines: 0, sources: 0, founders: 1 });
    expect(view.items.map(nameOf)).not.toContain('first shipment');
    expect(view.items.map(nameOf)).not.toContain('c'); // told with its source
    expect(view.total).toBe(view.items.length);
  });

  it('is more where more count as few, and pages without loss, the most urgent first', async () => {
    const whole = await atRisk('mostCarriers=5');
    expect(whole.items.map(nameOf)).toContain('first shipment');
    const breeders = whole.items.map((item) => item.breeders);
    expect(breeders).toEqual([...breeders].sort((one, two) => one - two));
    const paged: string[] = [];
    for (let after = ''; paged.length < 50;) {
      const page = await atRisk(`mostCarriers=5&limit=1${after}`);
      paged.push(...page.items.map(nameOf));
      if (page.next === null) break;
      after = `&after=${encodeURIComponent(page.next)}`;
    }
    expect(paged).toEqual(whole.items.map(nameOf));
  });

  it('is a source whose last animals are all of one sex, however many', async () => {
    const source = await make.source({ labelAsReceived: 'only sons' });
    for (const code of ['m1', 'm2', 'm3']) await add(code, { sex: 'male', sourceId: source.id });
    const found = find(await atRisk(), 'only sons');
    expect(found).toMatchObject({ breeders: 3, onlySex: 'male', genomes: 3, kept: { expected: 1 } });
    expect(found.why).toEqual([textWith('All 3 that may breed and carry genes of it are males')]);
    await add('f1', { sex: 'female', sourceId: source.id });
    expect((await atRisk()).items.map(nameOf)).not.toContain('only sons');
  });

  it('counts private animals of others, and tells nothing of them but that they are there', async () => {
    const source = await make.source({ labelAsReceived: 'kept secret' });
    await add('secret', { sex: 'female', sourceId: source.id, visibility: 'private' }, new Factory(other.http));
    const seen = find(await atRisk('', other.http), 'kept secret');
    expect(carriersOf(seen)).toEqual(['secret']);
    const veiled = find(await atRisk('', third.http), 'kept secret');
    expect(veiled).toMatchObject({ breeders: 1, onlySex: null });
    expect(veiled.carriers).toEqual([
      {
        animal: { id: 'private-1', number: null, code: null, sex: 'unsexed', isPrivate: true },
        line: null,
        keeper: null,
        keeperId: null,
        age: null,
        proven: null,
        share: { expected: 1, least: 1 },
        mayBreed: true,
        warnings: [],
      },
    ]);
  });

  it('names what it cannot take', async () => {
    const unknown = await api.http.get(`/api/v1/match/at-risk?lineId=${newId()}`).expect(422);
    expect(bodyOf<ProblemBody>(unknown).errors).toEqual([having({ pointer: '/lineId' })]);
    await api.http.get('/api/v1/match/at-risk?mostCarriers=0').expect(422);
    await api.http.get('/api/v1/match/at-risk?after=nonsense').expect(422);
    await api.stranger.get('/api/v1/match/at-risk').expect(401);
  });
});
