import type { ParentFacts } from './facts.ts';
import { say } from '../../platform/say.ts';

/** How a warning calls a parent: "the dam 1007-0", or "the possible dam 1007-0" where it is one of several. */
export function callParent(parent: ParentFacts, all: readonly ParentFacts[]): string {
  if (parent.role === 'either') return say`the possible parent ${parent.name}`;
  const isOneOfSeveral = all.some((other) => other !== parent && other.role === parent.role);
  return isOneOfSeveral ? say`the possible ${parent.role} ${parent.name}` : say`the ${parent.role} ${parent.name}`;
}
