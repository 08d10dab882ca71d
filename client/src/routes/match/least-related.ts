import type { IndividualItem } from '$lib/api/types.ts';
import { percent } from '$lib/ui/figures.ts';
import { isBlind, type Cell, type Grid } from './kinship-table.ts';

const name = (animal: IndividualItem) => animal.code ?? animal.number;

/**
 * The question "who is less related?" answered in a plain sentence. With one animal on a side, all mates of it in order;
 * else the least and the most related pair. Nothing known is said in words, never as 0 %.
 */
export function leastRelatedInWords(grid: Grid): string {
  const cells = grid.cells.flat().filter((cell) => cell.expected !== null);
  const known = cells.filter((cell) => !isBlind(cell)).sort(byExpected);
  const blind = cells.filter(isBlind);
  if (cells.length === 0) return '';
  const rest = blind.length > 0 ? ` ${blindInWords(blind, grid)}` : '';
  if (known.length === 0) return `Nothing can be compared.${rest}`;
  if (grid.rows.length === 1 || grid.columns.length === 1) return oneSided(known, grid) + rest;
  return bothSided(known) + rest;
}

function byExpected(a: Cell, b: Cell): number {
  return (a.expected ?? 0) - (b.expected ?? 0);
}

function oneSided(known: Cell[], grid: Grid): string {
  const mateOf = (cell: Cell) => name(grid.columns.length === 1 ? cell.row : cell.column);
  const single = name(grid.columns.length === 1 ? (known[0] as Cell).column : (known[0] as Cell).row);
  const least = known.filter((cell) => same(cell, known[0]));
  const others = known.filter((cell) => !same(cell, known[0]));
  const young = `their young would be ${percent(known[0]?.expected ?? 0)} inbred`;
  if (known.length === 1) return `${mateOf(known[0] as Cell)} and ${single}: ${young}.`;
  const lead =
    least.length > 1
      ? `${joined(least.map(mateOf))} are equally little related to ${single}: ${young}`
      : `Of these, ${mateOf(known[0] as Cell)} is the least related to ${single}: ${young}`;
  const list = others.slice(0, 6).map((cell) => `${mateOf(cell)}: ${percent(cell.expected ?? 0)}`);
  const more = others.length > 6 ? ` and ${others.length - 6} more` : '';
  return `${[lead, ...list].join('; ')}${more}.`;
}

function bothSided(known: Cell[]): string {
  const [least] = known as [Cell];
  const most = known[known.length - 1] ?? least;
  const pair = (cell: Cell) => `${name(cell.row)} and ${name(cell.column)}`;
  const equal = known.filter((cell) => same(cell, least));
  const young = `their young would be ${percent(least.expected ?? 0)} inbred`;
  const lead =
    equal.length > 1
      ? `Of these, ${equal.length} pairs are equally little related, among them ${pair(least)}: ${young}`
      : `Of these, ${pair(least)} are the least related: ${young}`;
  return same(most, least)
    ? `${lead}.`
    : `${lead}; the most related are ${pair(most)}: ${percent(most.expected ?? 0)}.`;
}

function blindInWords(blind: Cell[], grid: Grid): string {
  const names = [...grid.rows, ...grid.columns].filter((one) => one.nothingKnown).map((one) => name(one.animal));
  const some = new Set(blind.flatMap((cell) => [name(cell.row), name(cell.column)]));
  const involved = names.filter((one) => some.has(one));
  return `Of ${joined(involved)} no ancestor is recorded: nothing known, which is not unrelated.`;
}

const same = (a: Cell, b: Cell | undefined) => Math.abs((a.expected ?? 0) - (b?.expected ?? 0)) < 5e-5;

function joined(names: string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
}
