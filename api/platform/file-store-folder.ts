import { randomUUID } from 'node:crypto';
import { access, mkdir, open, rename, rm, type FileHandle } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Readable } from 'node:stream';
import { FileStore, missingFile, StoreProblem } from './file-store.ts';
import { say } from './say.ts';

/**
 * Files in a folder, spread over 256 folders by the first characters of their hash. Only the user of the service may look into it. A file is there
 * whole or not at all, also after a power cut: it is written beside, forced to the disk and then renamed.
 */
export class FolderStore extends FileStore {
  constructor(private readonly folder: string) {
    super();
  }

  override async put(hash: string, bytes: Uint8Array): Promise<void> {
    if (await this.has(hash)) return;
    try {
      const place = this.#placeOf(hash);
      await mkdir(dirname(place), { recursive: true, mode: 0o700 });
      const arriving = join(this.folder, `arriving-${randomUUID()}`);
      await writeWhole(arriving, bytes);
      await rename(arriving, place);
      await forceToDisk(dirname(place));
    } catch (error) {
      throw new StoreProblem(say`The file could not be stored. Nothing was written; try again in a moment.`, error);
    }
  }

  override async get(hash: string): Promise<Readable> {
    try {
      const file = await open(this.#placeOf(hash), 'r');
      return file.createReadStream();
    } catch (error) {
      if (isMissing(error)) throw missingFile();
      throw new StoreProblem(say`The file could not be read. Try again in a moment.`, error);
    }
  }

  override async has(hash: string): Promise<boolean> {
    return access(this.#placeOf(hash)).then(
      () => true,
      () => false,
    );
  }

  #placeOf(hash: string): string {
    if (!/^[0-9a-f]{64}$/.test(hash)) throw new Error('files are kept under their SHA-256');
    return join(this.folder, hash.slice(0, 2), hash);
  }
}

async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const file = await open(path, 'wx', 0o600);
  try {
    await file.writeFile(bytes);
    await file.sync();
  } catch (error) {
    await rm(path, { force: true });
    throw error;
  } finally {
    await file.close();
  }
}

/** A new name lasts once its folder is on the disk. Some systems open no folders; there it is as it is. */
async function forceToDisk(folder: string): Promise<void> {
  let opened: FileHandle | undefined;
  try {
    opened = await open(folder, 'r');
    await opened.sync();
  } catch {
    // the file itself was forced
  } finally {
    await opened?.close();
  }
}

const isMissing = (error: unknown): boolean => error instanceof Error && 'code' in error && error.code === 'ENOENT';
