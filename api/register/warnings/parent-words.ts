import type { ParentFacts } from './facts.ts';

/** How a warning calls a parent: "the dam 1007-0", or "the possible dam 1007-0" where it is one of several. */
export function callParent(parent: ParentFacts, all: readonly ParentFacts[]): string {
  if (parent.role === 'either') return `the possible parent ${parent.name}`;
  const isOneOfSeveral = all.some((other) => other !== parent && other.role === parent.role);
  return `the ${isOneOfSeveral ? 'possible ' : ''}${parent.role} ${parent.name}`;
}
