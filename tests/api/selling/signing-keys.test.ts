import { generateKeyPairSync } from 'node:crypto';
import { chmod, mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readSettings } from '../../../api/platform/settings.ts';
import { SigningKeys } from '../../../api/selling/signing-keys/signing-keys.service.ts';
import { readPublishedKeys, type SheetKey } from '../../../shared/sheet/sheet-keys.ts';
import { startApi, startApiOn, type TestApi } from '../../support/api.ts';

let api: TestApi;
let folder: string;
let keyFile: string;
const opened: TestApi[] = [];

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'linekeeper-keys-'));
  keyFile = join(folder, 'deep', 'signing-key.pem');
  api = await startApi({ signingKeyFile: keyFile });
});

afterEach(async () => {
  for (const copy of opened.splice(0)) await copy.close();
  await api.close();
  await rm(folder, { recursive: true, force: true });
});

const keysOf = (copy: TestApi = api): SigningKeys => copy.app.get(SigningKeys);

/** The keys as anybody reads them. */
async function published(): Promise<SheetKey[]> {
  return readPublishedKeys(JSON.parse((await api.stranger.get('/.well-known/jwks.json').expect(200)).text));
}

/** A second copy of the service on the same register. */
async function copy(settings: Parameters<typeof startApiOn>[1] = { signingKeyFile: keyFile }): Promise<TestApi> {
  const started = await startApiOn(api.databaseUrl, settings);
  opened.push(started);
  return started;
}

const pem = (): string => generateKeyPairSync('ed25519').privateKey.export({ format: 'pem', type: 'pkcs8' }).toString();

describe('the private key', () => {
  it('is made at the first start, for the user of the service alone, and only its public part is told', async () => {
    expect(await published()).toEqual([]);
    await keysOf().ready();
    expect((await stat(keyFile)).mode & 0o777).toBe(0o600);
    expect((await stat(join(folder, 'deep'))).mode & 0o777).toBe(0o700);
    const [key, ...more] = await published();
    expect(more).toEqual([]);
    expect(key).toMatchObject({ usedUntil: null });
    const secret = (await readFile(keyFile, 'utf8')).split('\n')[1] ?? '';
    expect(secret.length).toBeGreaterThan(40);
    const dump = await api.dataSource.query<unknown[]>('select * from signing_key');
    expect(JSON.stringify(dump)).not.toContain(secret.slice(20, 60));
    // nothing more happens at the second start
    await keysOf().ready();
    expect(await published()).toEqual([key]);
  });

  it('is one, however many copies of the service start at once on one folder', async () => {
    const copies = [api, await copy(), await copy()];
    await Promise.all(copies.flatMap((each) => [1, 2, 3, 4].map(() => keysOf(each).ready())));
    expect(await published()).toHaveLength(1);
    expect(await readdir(join(folder, 'deep'))).toEqual(['signing-key.pem']);
  });

  it('is another one in every folder, and all are published', async () => {
    const other = await copy({ signingKeyFile: join(folder, 'other.pem') });
    await Promise.all([keysOf().ready(), keysOf(other).ready()]);
    expect(await published()).toHaveLength(2);
    expect((await keysOf(other).list()).filter(({ isOwn }) => isOwn)).toHaveLength(1);
  });

  it('is made anew where it was lost; the old one stays published until an administrator retires it', async () => {
    await keysOf().ready();
    const [lost] = await published();
    await rm(keyFile);
    await keysOf().ready();
    expect((await published()).map(({ usedUntil }) => usedUntil)).toEqual([null, null]);
    await api.http.post(`/api/v1/signing-keys/${lost?.kid}/retirement`).send({ reason: 'the disk broke' }).expect(201);
    const keys = await published();
    expect(keys.find(({ kid }) => kid === lost?.kid)?.usedUntil).not.toBeNull();
    expect(keys.filter(({ usedUntil }) => usedUntil === null)).toHaveLength(1);
  });

  it('is not used while others may read it, and says what to do', async () => {
    await keysOf().ready();
    for (const mode of [0o644, 0o660, 0o602]) {
      await chmod(keyFile, mode);
      await expect(keysOf().ready()).rejects.toThrow(/chmod 600/u);
    }
    await chmod(keyFile, 0o400);
    await keysOf().ready();
  });

  it.each([
    ['nothing', ''],
    [
      'a key of another kind',
      generateKeyPairSync('x25519').privateKey.export({ format: 'pem', type: 'pkcs8' }).toString(),
    ],
    ['a public key', generateKeyPairSync('ed25519').publicKey.export({ format: 'pem', type: 'spki' }).toString()],
    ['half of a key', pem().slice(0, 60)],
  ])('is never replaced by itself where the file holds %s', async (_, content) => {
    await keysOf().ready();
    await writeFile(keyFile, content);
    const refusal = await keysOf()
      .ready()
      .then(
        () => 'it was taken',
        (error: unknown) => String(error),
      );
    expect(refusal).toContain('holds no private key for Ed25519');
    if (content !== '') expect(refusal).not.toContain(content.split('\n')[1]?.slice(0, 20) || 'nothing of it');
    expect(await readFile(keyFile, 'utf8')).toBe(content);
  });

  it('has to be there where somebody named its file', async () => {
    const other = await copy({ signingKeyFile: join(folder, 'named.pem'), isSigningKeyMade: false });
    await expect(keysOf(other).ready()).rejects.toThrow(/correct SIGNING_KEY_FILE/u);
    expect(await readdir(folder)).not.toContain('named.pem');
  });

  it('can be set as PEM or JWK, and is then not this service’s to replace', async () => {
    const { privateKey } = generateKeyPairSync('ed25519');
    const given = [
      privateKey.export({ format: 'pem', type: 'pkcs8' }).toString().replaceAll('\n', '\\n'),
      JSON.stringify(privateKey.export({ format: 'jwk' })),
    ];
    for (const SIGNING_KEY of given) {
      const { signingKey } = readSettings({ SIGNING_KEY });
      const other = await copy({ signingKey });
      await keysOf(other).ready();
      const [key] = await published();
      expect(key?.x).toBe(privateKey.export({ format: 'jwk' }).x);
      await expect(keysOf(other).renew('a new year')).rejects.toMatchObject({ status: 409 });
    }
    const [key] = await published();
    const other = await copy({ signingKey: readSettings({ SIGNING_KEY: given[0] }).signingKey });
    await keysOf().retire(key?.kid ?? '', 'it was in a mail');
    await expect(keysOf(other).ready()).rejects.toThrow(/Set another one/u);
  });
});

describe('a new key', () => {
  it('takes the place of the old one, which stays published with its time of use', async () => {
    await keysOf().ready();
    const [old] = await published();
    const answer = await api.http.post('/api/v1/signing-keys').send({ reason: 'a new year' }).expect(201);
    const { kid } = answer.body as { kid: string };
    const keys = await published();
    expect(keys).toHaveLength(2);
    const [now, before] = keys;
    expect(now).toMatchObject({ kid, usedUntil: null });
    expect(before).toMatchObject({ kid: old?.kid, usedFrom: old?.usedFrom });
    expect(Date.parse(before?.usedUntil ?? '')).toBeGreaterThanOrEqual(Date.parse(now?.usedFrom ?? ''));
    expect((await stat(keyFile)).mode & 0o777).toBe(0o600);
  });

  it('is one, though two copies on one folder make it at once, and both sign with it', async () => {
    const other = await copy();
    await keysOf().ready();
    const made = await Promise.all([keysOf().renew('a new year'), keysOf(other).renew('a new year')]);
    expect(new Set(made.map(({ kid }) => kid)).size).toBe(1);
    expect(await published()).toHaveLength(2);
    expect(made.every(({ isOwn, usedUntil }) => isOwn && usedUntil === null)).toBe(true);
  });

  it('is made by itself where the present one was retired', async () => {
    await keysOf().ready();
    const [old] = await published();
    await keysOf().retire(old?.kid ?? '', 'somebody read it');
    await Promise.all([keysOf().ready(), keysOf(await copy()).ready()]);
    const [now, ...before] = await published();
    expect(now).toMatchObject({ usedUntil: null });
    expect(before.map(({ kid }) => kid)).toEqual([old?.kid]);
  });

  it('stays as it is in the database, whoever tries', async () => {
    await keysOf().ready();
    await expect(api.dataSource.query(`update signing_key set x = repeat('A', 43)`)).rejects.toThrow(/never altered/u);
    await keysOf().renew('a new year');
    await expect(
      api.dataSource.query(`update signing_key set used_until = null, reason = null where used_until is not null`),
    ).rejects.toThrow(/never altered/u);
  });

  it('is in the journal, for administrators', async () => {
    await keysOf().ready();
    await api.http.post('/api/v1/signing-keys').send({ reason: 'a new year' }).expect(201);
    const [key] = await published();
    await keysOf().retire(key?.kid ?? '', 'somebody read it');
    const read = async (http: TestApi['http']): Promise<string[]> =>
      ((await http.get('/api/v1/journal').expect(200)).body as { items: { action: string }[] }).items.map(
        ({ action }) => action,
      );
    expect(await read(api.http)).toEqual(expect.arrayContaining(['key-made', 'key-retired']));
    const member = await api.addKeeper('Somebody');
    expect(await read(member.http)).not.toEqual(expect.arrayContaining(['key-made']));
  });
});

describe('the published keys', () => {
  it('are for everybody and for caches, and come without a cookie', async () => {
    await keysOf().ready();
    const { headers } = await api.stranger.get('/.well-known/jwks.json').expect(200);
    expect(headers).toMatchObject({
      'cache-control': 'public, max-age=300',
      'access-control-allow-origin': '*',
      'content-type': expect.stringContaining('application/jwk-set+json') as unknown,
    });
    expect(headers['set-cookie']).toBeUndefined();
  });

  it('cannot be retired twice, nor where there is none', async () => {
    await keysOf().ready();
    const [key] = await published();
    const path = `/api/v1/signing-keys/${key?.kid}/retirement`;
    await api.http.post(path).send({ reason: 'lost' }).expect(201);
    await api.http.post(path).send({ reason: 'lost' }).expect(409);
    await api.http.post('/api/v1/signing-keys/nothing/retirement').send({ reason: 'lost' }).expect(404);
  });
});
