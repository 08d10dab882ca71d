import { Problem } from '../../platform/problem.ts';
import { say } from '../../platform/say.ts';

/** What is wrong with a file and what to do about it, in sentences. */
export class FileFault extends Error {}

/** 415: the file is of a kind that is not taken, whatever its name says. */
export function wrongKind(detail: string, pointer: string): Problem {
  return new Problem('unsupported-media-type', 415, say`Not a type that is read here`, detail, [{ pointer, detail }]);
}

/** 413: the file is too large. */
export function tooLarge(what: string, most: number, remedy: string, pointer: string): Problem {
  const detail = say`${what} may have ${most / 1_000_000} MB at most. ${remedy}`;
  return new Problem('too-large', 413, say`Too large`, detail, [{ pointer, detail }]);
}
