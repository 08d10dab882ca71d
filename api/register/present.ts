/** What is there, or the problem to throw where nothing is. */
export function present<T>(found: T | null | undefined, problem: () => Error): T {
  if (found === null || found === undefined) throw problem();
  return found;
}
