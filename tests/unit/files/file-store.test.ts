import { mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { BucketStore } from '../../../api/platform/file-store-bucket.ts';
import { FolderStore } from '../../../api/platform/file-store-folder.ts';
import { contentHash, StoreProblem, type FileStore } from '../../../api/platform/file-store.ts';
import { startBucketServer, type BucketServer } from '../../support/bucket-server.ts';

const credentials = { bucket: 'frogs', region: 'eu-central-1', accessKey: 'AKFROG', secretKey: 'secret-of-the-bucket' };
const bytes = Buffer.from('a permit of 1994');
const hash = contentHash(bytes);

let folder: string;
let bucket: BucketServer;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'store-'));
  bucket = await startBucketServer(credentials);
});

afterEach(async () => {
  await bucket.close();
  await rm(folder, { recursive: true });
});

const bucketStore = (changed: Partial<typeof credentials> = {}): BucketStore =>
  new BucketStore({ ...credentials, ...changed, endpoint: bucket.url });

const stores: [string, () => FileStore][] = [
  ['a folder', () => new FolderStore(join(folder, 'files'))],
  ['a bucket', () => bucketStore()],
];

describe.each(stores)('%s', (_, open) => {
  it('gives back what was put there, byte by byte, however often it was put', async () => {
    const store = open();
    expect(await store.has(hash)).toBe(false);
    await Promise.all([store.put(hash, bytes), store.put(hash, bytes)]);
    await store.put(hash, bytes);
    expect(await store.has(hash)).toBe(true);
    expect(await buffer(await store.get(hash))).toEqual(bytes);
    const large = Buffer.alloc(6_000_000, 'spots');
    await store.put(contentHash(large), large);
    expect(contentHash(await buffer(await store.get(contentHash(large))))).toBe(contentHash(large));
  });

  it('says that a file is gone, and does not break', async () => {
    await expect(open().get(hash)).rejects.toThrow(/not where files are kept/);
    await expect(open().get(hash)).rejects.toBeInstanceOf(StoreProblem);
  });
});

describe('a folder of files', () => {
  it('is for the user of the service alone, and holds whole files only', async () => {
    const store = new FolderStore(join(folder, 'files'));
    await store.put(hash, bytes);
    const place = join(folder, 'files', hash.slice(0, 2));
    expect((await stat(join(place, hash))).mode & 0o777).toBe(0o600);
    expect((await stat(place)).mode & 0o777).toBe(0o700);
    expect((await stat(join(folder, 'files'))).mode & 0o777).toBe(0o700);
    expect(await readdir(place)).toEqual([hash]);
    expect(await readdir(join(folder, 'files'))).toEqual([hash.slice(0, 2)]);
    expect(await readFile(join(place, hash))).toEqual(bytes);
  });

  it('takes no name that is none of a file', async () => {
    const store = new FolderStore(folder);
    await writeFile(join(folder, 'secret'), 'secret');
    for (const name of ['../secret', 'secret', `${hash}/../../secret`, '', hash.toUpperCase()])
      await expect(store.get(name)).rejects.toThrow();
  });

  it('that cannot be written says so', async () => {
    await writeFile(join(folder, 'a-file'), '');
    await expect(new FolderStore(join(folder, 'a-file')).put(hash, bytes)).rejects.toBeInstanceOf(StoreProblem);
  });
});

describe('a bucket', () => {
  it('is asked with signed requests; another secret gets nothing, and no message tells it', async () => {
    await bucketStore().put(hash, bytes);
    expect(bucket.asked).toEqual([`PUT /frogs/${hash}`]);
    expect(bucket.objects.get(hash)).toEqual(bytes);
    for (const other of [{ secretKey: 'another-secret' }, { accessKey: 'AKTOAD' }, { region: 'us-east-1' }]) {
      const refusal = await bucketStore(other)
        .get(hash)
        .then(
          () => new Error('it was given'),
          (error: unknown) => error as Error,
        );
      expect(refusal).toBeInstanceOf(StoreProblem);
      expect(`${refusal.message} ${refusal.stack}`).not.toMatch(/another-secret|secret-of-the-bucket|AKFROG|AKTOAD/);
    }
  });

  it('that fails for a moment is asked again, and one that fails on says so', async () => {
    bucket.failing = 503;
    setTimeout(() => (bucket.failing = null), 30);
    await bucketStore().put(hash, bytes);
    expect(bucket.asked.length).toBeGreaterThan(1);
    bucket.failing = 500;
    await expect(bucketStore().put(hash, bytes)).rejects.toBeInstanceOf(StoreProblem);
    await expect(bucketStore().has(hash)).rejects.toBeInstanceOf(StoreProblem);
  });

  it('that nobody serves says so', async () => {
    const nobody = new BucketStore({ ...credentials, endpoint: 'http://127.0.0.1:1' });
    await expect(nobody.put(hash, bytes)).rejects.toBeInstanceOf(StoreProblem);
  });
});
