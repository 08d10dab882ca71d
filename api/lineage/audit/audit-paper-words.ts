import type { AnimalRef, OriginView } from '../lineage.view.ts';

/** Where genes begin, as a column is headed by it. */
export function originName({ source, founder, unknownParentOf }: OriginView): string {
  if (source) return source.label ? `${source.title}, “${source.label}”` : source.title;
  if (founder) return animalName(founder);
  return `unknown parent of the ${unknownParentOf?.title ?? 'clutch'}`;
}

/** An animal by its code and number; a private one by what stands for it. */
export function animalName({ code, number: registry, isPrivate, id }: AnimalRef): string {
  if (isPrivate) return id.replace('-', ' animal ');
  return code === null ? (registry ?? '') : `${code} (${registry ?? ''})`;
}

/** A whole number with spaces between thousands. */
export function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+(?!\d))/g, '\u00a0');
}

/** A number of things. */
export const counted = (count: number, noun: string): string => `${grouped(count)} ${noun}${count === 1 ? '' : 's'}`;
