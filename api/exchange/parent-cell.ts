import { readNumber } from './cell-words.ts';
import { say } from '../platform/say.ts';

/** A candidate as a cell writes it. */
interface WrittenCandidate {
  /** A code or a registry number; `?` for a frog nobody knows. */
  readonly name: string;
  /** The weight behind the colon, null where there is none. */
  readonly weight: number | null;
}

/** What a cell of candidate parents says, and what is wrong with the way it is written. */
export interface WrittenCandidates {
  readonly candidates: readonly WrittenCandidate[];
  readonly faults: readonly string[];
}

/** Most candidates on one side, or in one group. */
const mostCandidates = 50;

/** Least weight: below it stands no observation, and products of such weights are no numbers any more. */
const leastWeight = 1e-6;

/** How far weights may miss 1: what a person loses by writing a few decimals, not a forgotten candidate. */
const weightTolerance = 1e-6;

/** Most pieces between slashes that one code may span: codes such as `2021/03` are common. */
const longestSpan = 3;

/**
 * Every name that a cell of candidates may contain, for asking the registry beforehand: the whole cell, pieces between slashes
 * and a few of them together, and these without a weight.
 */
export function namesIn(text: string): Set<string> {
  const names = new Set([text]);
  const pieces = piecesOf(text);
  for (let start = 0; start < pieces.length; start++)
    for (let end = start + 1; end <= Math.min(start + longestSpan, pieces.length); end++) {
      const name = pieces.slice(start, end).join('/');
      names.add(name).add(splitWeight(name).name);
    }
  names.delete('');
  names.delete('?');
  return names;
}

const piecesOf = (text: string): string[] =>
  text.split('/', mostCandidates * longestSpan + 1).map((piece) => piece.trim());

/**
 * Reads a cell such as `EA-01:0.7/EA-02:0.3` or `EA-01/?`. A code may itself contain a slash or a colon: what is a code as it
 * stands is taken for that code, and of several readings the one with the longest code.
 *
 * @param isCode whether the sheet or the registry has an animal of this name
 */
export function readCandidates(text: string, isCode: (name: string) => boolean): WrittenCandidates {
  if (text === '') return { candidates: [], faults: [] };
  if (isCode(text)) return { candidates: [{ name: text, weight: null }], faults: [] };
  const faults: string[] = [];
  const candidates: WrittenCandidate[] = [];
  const pieces = piecesOf(text);
  for (let start = 0; start < pieces.length;) {
    const span = spanOfCode(pieces, start, isCode);
    const piece = pieces.slice(start, start + span).join('/');
    start += span;
    if (piece === '')
      faults.push(say`Between two slashes, or at an end, a code is missing. Write ? for an unknown candidate.`);
    else candidates.push(readCandidate(piece, isCode, faults));
  }
  if (candidates.length > mostCandidates) {
    const fault = say`There are more candidates than can be recorded; at most ${mostCandidates}. Name those that are likely.`;
    return { candidates: [], faults: [fault] };
  }
  if (faults.length === 0) checkWeights(candidates, faults);
  return { candidates, faults };
}

/** How many pieces the code beginning at one of them spans: usually one. */
function spanOfCode(pieces: readonly string[], start: number, isCode: (name: string) => boolean): number {
  for (let span = Math.min(longestSpan, pieces.length - start); span > 1; span--) {
    const name = pieces.slice(start, start + span).join('/');
    const unweighted = splitWeight(name);
    if (isCode(name) || (unweighted.weight?.includes('/') === false && isCode(unweighted.name))) return span;
  }
  return 1;
}

function readCandidate(piece: string, isCode: (name: string) => boolean, faults: string[]): WrittenCandidate {
  if (isCode(piece)) return { name: piece, weight: null };
  const { name, weight } = splitWeight(piece);
  if (weight === null) return { name, weight: null };
  const value = readNumber(weight);
  if (name === '') faults.push(say`"${piece}" has a weight and no code. Write ? for an unknown candidate.`);
  if (value === null)
    faults.push(
      say`The weight "${weight}" of ${name} is no number. Write it as in EA-01:0.7/EA-02:0.3, or leave all weights out.`,
    );
  else if (!(value >= leastWeight && value <= 1))
    faults.push(
      say`The weight ${weight} of ${name} is out of range. Weights are probabilities above 0, at most 1: write 0.7 for 70 %, and leave out who cannot be a parent.`,
    );
  return { name, weight: value };
}

function splitWeight(piece: string): { name: string; weight: string | null } {
  const colon = piece.lastIndexOf(':');
  return colon < 0
    ? { name: piece, weight: null }
    : { name: piece.slice(0, colon).trim(), weight: piece.slice(colon + 1).trim() };
}

function checkWeights(candidates: readonly WrittenCandidate[], faults: string[]): void {
  const weighted = candidates.filter(({ weight }) => weight !== null);
  if (weighted.length === 0) return;
  if (weighted.length < candidates.length) {
    faults.push(
      say`Some candidates have a weight and some have none. Give every one a weight, or none: then the odds are equal.`,
    );
    return;
  }
  const sum = weighted.reduce((total, { weight }) => total + (weight ?? 0), 0);
  if (Math.abs(sum - 1) > weightTolerance)
    faults.push(
      say`The weights sum to ${Number(sum.toPrecision(7))}, not to 1. Correct them, add ?:weight for an unknown parent, or leave all weights out for equal odds.`,
    );
}
