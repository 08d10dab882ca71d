/** The page that every address of the client is shown by. */
export const shell = '/';

/** What a request is answered from: what is kept of the client, or the network alone. */
export type Answerer = 'kept' | 'shell' | 'network';

interface Asked {
  readonly method: string;
  readonly url: string;
  /** `navigate` where a page is opened. */
  readonly mode: string;
}

/**
 * Decides who answers a request. Answers of the API are never kept here: who may see what is not known to a service worker; what a keeper
 * saw is kept by the page, for that keeper (`lib/offline`).
 */
export function answererOf(asked: Asked, origin: string, kept: ReadonlySet<string>): Answerer {
  const url = new URL(asked.url);
  if (asked.method !== 'GET' || url.origin !== origin || isOfService(url.pathname)) return 'network';
  // parts of another version, too: a tab that began with it goes on with it
  if ((kept.has(url.pathname) && url.pathname !== shell) || /^\/_app\/immutable\//.test(url.pathname)) return 'kept';
  if (asked.mode === 'navigate' && !isFile(url.pathname)) return 'shell';
  return 'network';
}

const isOfService = (path: string): boolean => /^\/(api|\.well-known)(\/|$)/i.test(path);

/** Files of the client that are not kept, such as the page that checks sheets without a site. */
const isFile = (path: string): boolean => /^\/_app\//.test(path) || /\.(html|svg|csv|js|png|json)$/.test(path);

/** Large files that one page needs, and letters of alphabets that few names are written in: whoever needs them fetches them. */
const isRare = (path: string): boolean =>
  /countries-50m|\/icons\/|example\.csv$|-(cyrillic|greek|vietnamese)(-ext)?-/.test(path);

/** What is kept of a version: the page, and its scripts, styles and fonts. */
export function keptFiles(built: readonly string[], files: readonly string[]): string[] {
  return [shell, ...[...built, ...files].filter((path) => !isRare(path))];
}

const prefix = 'shell-';

/** Under which name the files of a version are kept. */
export const cacheName = (version: string): string => prefix + version;

/**
 * Caches that nobody needs any more, of all in the order in which they were made. Of two versions the older one is kept, since another
 * tab may still be at work with it and fetches parts of it as it goes.
 */
export function outdated(names: readonly string[], current: string): string[] {
  const before = names.filter((name) => name.startsWith(prefix) && name !== current);
  return before.slice(0, -1);
}
