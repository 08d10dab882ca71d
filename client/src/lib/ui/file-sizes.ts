import { session } from '../people/session.svelte.ts';
import { written } from './figures.ts';

type Sort = 'document' | 'picture';

const words: Record<Sort, string> = { document: 'a PDF', picture: 'a picture' };

/** A number of bytes as people say it: `840 kB`, `1.2 MB`. */
export function sizeInWords(bytes: number): string {
  if (bytes < 999_500) return `${Math.max(1, Math.round(bytes / 1000))} kB`;
  return `${written(String(Math.round(bytes / 100_000) / 10))} MB`;
}

const most = (sort: Sort): number | null => session.fileLimits?.[`${sort}Bytes`] ?? null;

/** How large files of a sort may be, `25 MB`; empty while nobody knows. */
export function limitInWords(sort: Sort): string {
  const bytes = most(sort);
  return bytes === null ? '' : sizeInWords(bytes);
}

/** What is wrong with the size of a file before it is sent, and what to do; null where nothing is. */
export function sizeProblem({ size, type }: Pick<File, 'size' | 'type'>): string | null {
  const sort: Sort = type === 'application/pdf' ? 'document' : 'picture';
  const bytes = most(sort);
  if (size === 0) return 'This file is empty. Choose it again.';
  if (bytes === null || size <= bytes) return null;
  return `This file has ${sizeInWords(size)}, and ${words[sort]} may have ${sizeInWords(bytes)} at most. Save it smaller, then choose that.`;
}
