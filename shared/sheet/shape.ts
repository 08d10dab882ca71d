/** A value that does not have the shape that was wanted; the message says where (JSON Pointer) and what belongs there. */
export class ShapeProblem extends Error {}

/** Gives a value of the wanted shape as what it is, or throws ShapeProblem. `place` is its JSON Pointer. */
export type Shape<T> = (value: unknown, place?: string) => T;

/** What a shape gives. */
export type Shaped<S> = S extends Shape<infer T> ? T : never;

const wrong = (place: string, wanted: string): never => {
  throw new ShapeProblem(`${place === '' ? 'The whole' : place} must be ${wanted}.`);
};

/** A text of `least` to `most` characters, of this pattern. */
export function text(most: number, { least = 1, pattern = /^/u, wanted = 'text' } = {}): Shape<string> {
  return (value, place = '') =>
    typeof value === 'string' && value.length >= least && value.length <= most && pattern.test(value)
      ? value
      : wrong(place, `${wanted} of ${least} to ${most} characters`);
}

/** A number from `least` to `most`. */
export function amount(least: number, most: number): Shape<number> {
  return (value, place = '') =>
    typeof value === 'number' && value >= least && value <= most
      ? value
      : wrong(place, `a number, ${least} to ${most}`);
}

/** A whole number from `least` to `most`. */
export function whole(least: number, most: number): Shape<number> {
  return (value, place = '') =>
    Number.isInteger(amount(least, most)(value, place)) ? (value as number) : wrong(place, 'a whole number');
}

/** True or false. */
export const yesOrNo: Shape<boolean> = (value, place = '') =>
  typeof value === 'boolean' ? value : wrong(place, 'true or false');

/** One of some words. */
export function oneOf<const T extends string | number>(words: readonly T[]): Shape<T> {
  return (value, place = '') => words.find((word) => word === value) ?? wrong(place, `one of ${words.join(', ')}`);
}

/** What may also be null. */
export function orNull<T>(shape: Shape<T>): Shape<T | null> {
  return (value, place = '') => (value === null ? null : shape(value, place));
}

/** A list of at most `most`. */
export function listOf<T>(shape: Shape<T>, most: number): Shape<T[]> {
  return (value, place = '') =>
    Array.isArray(value) && value.length <= most
      ? value.map((entry: unknown, index) => shape(entry, `${place}/${index}`))
      : wrong(place, `a list of at most ${most}`);
}

/** An object with exactly these fields; where others are `ignored`, with at least these. */
export function object<F extends Record<string, Shape<unknown>>>(
  fields: F,
  others: 'refused' | 'ignored' = 'refused',
): Shape<{ readonly [Name in keyof F]: Shaped<F[Name]> }> {
  return (value, place = '') => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return wrong(place, 'an object');
    const other = Object.keys(value).find((name) => !Object.hasOwn(fields, name));
    if (other !== undefined && others === 'refused')
      throw new ShapeProblem(`${place}/${other.slice(0, 60)} is not known.`);
    const entries = Object.entries(fields).map(([name, shape]) => {
      if (!Object.hasOwn(value, name)) throw new ShapeProblem(`${place}/${name} is missing.`);
      return [name, shape((value as Record<string, unknown>)[name], `${place}/${name}`)];
    });
    return Object.fromEntries(entries) as { readonly [Name in keyof F]: Shaped<F[Name]> };
  };
}
