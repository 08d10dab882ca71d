// @vitest-environment node
import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, it } from 'vitest';
import {
  findAnswer,
  forgetSeen,
  keepAnswer,
  lastSession,
  mostRecords,
  recordOf,
  rememberSession,
} from '$lib/offline/seen-records.ts';

const idOf = (at: number): string => `${String(at).padStart(8, '0')}-0000-4000-8000-000000000000`;
const [orla, tobiah] = [idOf(900), idOf(901)];
const animal = (at: number): string => JSON.stringify({ id: idOf(at), number: `${at}-0`, version: 1 });

const keepAnimal = (keeper: string, at: number, now = at): Promise<void> =>
  keepAnswer(keeper, `/individuals/${idOf(at)}`, animal(at), now);

beforeEach(async () => {
  await forgetSeen(null);
  await rememberSession(orla, '{"keeper":"Orla"}');
});

describe('what a device keeps of the register', () => {
  it.each([
    [`/individuals/${idOf(1)}`, `individuals/${idOf(1)}`],
    [`/individuals/${idOf(1)}/pedigree?generations=4`, `individuals/${idOf(1)}`],
    [`/individuals/${idOf(1)}/descendants?generations=2`, `individuals/${idOf(1)}`],
    [`/photographs?individualId=${idOf(1)}&limit=200`, `individuals/${idOf(1)}`],
    [`/clutches/${idOf(2)}`, `clutches/${idOf(2)}`],
    [`/lines/${idOf(3)}`, `lines/${idOf(3)}`],
    [`/lines/${idOf(3)}/label-history`, `lines/${idOf(3)}`],
    [`/lineage/set?lineId=${idOf(3)}&status=alive`, `lines/${idOf(3)}`],
    [`/kept-plans?lineId=${idOf(3)}&limit=5`, `lines/${idOf(3)}`],
    [`/claims?lineId=${idOf(3)}&limit=200`, `lines/${idOf(3)}`],
    [`/sources/${idOf(4)}/living`, `sources/${idOf(4)}`],
    [`/individuals?sourceId=${idOf(4)}&limit=100`, `sources/${idOf(4)}`],
    [`/claims?sourceId=${idOf(4)}&limit=200`, `sources/${idOf(4)}`],
    [`/evidence?claimId=${idOf(5)}&limit=200`, `claims/${idOf(5)}`],
    [`/kept-plans/${idOf(6)}`, `kept-plans/${idOf(6)}`],
    ['/kept-plans?limit=100&total=true', 'list/kept-plans'],
    ['/pairings?limit=200', 'list/pairings'],
    ['/individuals?status=alive&limit=100', 'list/individuals'],
  ])('of %s belongs to %s', (address, record) => expect(recordOf(address)).toBe(record));

  it.each([
    '/session',
    '/keepers',
    '/journal?limit=50',
    '/individuals?q=imi&limit=8',
    '/individuals?after=abc',
    `/individuals/${idOf(1)}/mates`,
    '/provenance-sheets',
    `/plans/${idOf(1)}`,
    `/lines/${idOf(1)}/audit`,
    '/lineage/set?line=Zancaval',
  ])('does not include %s', (address) => expect(recordOf(address)).toBeNull());

  it('is found again as it was seen, with the time', async () => {
    await keepAnimal(orla, 1, 1_000);
    expect(await findAnswer(orla, `/individuals/${idOf(1)}`)).toMatchObject({ text: animal(1), seenAt: 1_000 });
    expect(await findAnswer(orla, `/individuals/${idOf(2)}`)).toBeNull();
  });

  it('finds the animal of a label by its number', async () => {
    await keepAnimal(orla, 7);
    const found = await findAnswer(orla, '/individuals?number=7-0');
    expect(JSON.parse(found?.text ?? '')).toMatchObject({ items: [{ id: idOf(7) }] });
    expect(await findAnswer(orla, '/individuals?number=8-0')).toBeNull();
  });

  it('is what one keeper saw, never shown to another, and forgotten when another signs in', async () => {
    await keepAnimal(orla, 1);
    expect(await findAnswer(tobiah, `/individuals/${idOf(1)}`)).toBeNull();
    await forgetSeen(tobiah);
    expect(await findAnswer(orla, `/individuals/${idOf(1)}`)).toBeNull();
    expect(await lastSession()).toBeNull();
  });

  it('stays for the keeper who goes on', async () => {
    await keepAnimal(orla, 1);
    await forgetSeen(orla);
    expect(await findAnswer(orla, `/individuals/${idOf(1)}`)).not.toBeNull();
    expect(await lastSession()).toBe('{"keeper":"Orla"}');
  });

  it('takes no answer that comes after its keeper has left', async () => {
    await forgetSeen(null);
    await keepAnimal(orla, 1);
    expect(await findAnswer(orla, `/individuals/${idOf(1)}`)).toBeNull();
  });

  it(`is the ${mostRecords} records seen last, with all that belongs to them`, async () => {
    await keepAnswer(orla, `/individuals/${idOf(0)}/lineage`, '{}', 0);
    for (let at = 0; at < mostRecords + 5; at++) await keepAnimal(orla, at);
    expect(await findAnswer(orla, `/individuals/${idOf(4)}`)).toBeNull();
    expect(await findAnswer(orla, `/individuals/${idOf(0)}/lineage`)).toBeNull();
    expect(await findAnswer(orla, `/individuals/${idOf(5)}`)).not.toBeNull();
  });
});
