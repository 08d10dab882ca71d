import { percent } from '../../ui/figures.ts';
import { nameOf, roundedProbability } from '../ancestors/ancestor-table.ts';
import { shortened } from '../ancestors/chart-items.ts';
import type { IndividualNode } from '../ancestors/pedigree-view.ts';
import type { KnownDepth } from './bracket-slots.ts';
import type { PlacedSlot } from './bracket-layout.ts';

/** One line of a slot. */
export interface SlotLine {
  text: string;
  kind: 'name' | 'odds' | 'figure' | 'origin' | 'see';
}

/** F, and the depth of the pedigree that it rests on: generations in which every ancestor is known, of those in which any is. */
export function inbreedingInWords(
  inbreeding: number | null | undefined,
  depth: KnownDepth,
  letters = Infinity,
): string[] {
  if (depth.most === 0) return ['F: nothing known'];
  const figure = inbreeding === null || inbreeding === undefined ? 'F: nothing known' : `F ${percent(inbreeding)}`;
  const most = `${depth.most}${depth.goesOn ? '+' : ''}`;
  const known = `depth ${depth.full} of ${most}`;
  return [figure, known.length > letters ? `depth ${depth.full}/${most}` : known];
}

/** What is written in a slot, most needed first, as many lines as have room, each cut to the slot's width. */
export function slotLines(slot: PlacedSlot, type: number): SlotLine[] {
  if (!slot.animal) return [{ text: 'not known', kind: 'origin' }];
  const isNarrow = slot.lines === 1;
  const room = slot.width - textFrom(type) - (isNarrow && slot.see === null ? barWidth.inLine + 0.6 : 0);
  const letters = Math.floor(room / (type * letterWidth));
  const lines = isNarrow ? [oneLine(slot, slot.animal, letters)] : allLines(slot, slot.animal, letters);
  const most = isNarrow || slot.see !== null ? slot.lines : slot.lines - 1;
  return fitted(lines, most).map(({ text, kind }) => ({ text: shortened(text, room, type), kind }));
}

/** Mean width of a letter, in parts of the type's size. */
const letterWidth = 0.54;

function oneLine(slot: PlacedSlot, animal: IndividualNode, letters: number): SlotLine {
  const joined = (parts: string[]): string => parts.filter((part) => part !== '').join(' ');
  const odds = slot.probability < 1 ? roundedProbability(slot.probability) : '';
  if (slot.see !== null) return { text: `${joined([nameOf(animal), odds])}, see ${slot.see}`, kind: 'see' };
  const { others } = slot;
  const other = others.length === 1 ? 'or 1 other' : others.length > 1 ? `or ${others.length} others` : '';
  const whole = [nameOf(animal), animal.code ? animal.number : null].filter((part) => part !== null).join(' ');
  const text = joined([whole, odds, other]);
  return { text: text.length <= letters ? text : joined([nameOf(animal), odds, other]), kind: 'name' };
}

function allLines(slot: PlacedSlot, animal: IndividualNode, letters: number): SlotLine[] {
  const { see, others, depth, probability } = slot;
  const lines: SlotLine[] = [];
  const add = (parts: string[], between: string, kind: SlotLine['kind']): void => {
    const whole = parts.join(between);
    for (const text of whole.length <= letters ? [whole] : parts) lines.push({ text, kind });
  };
  const odds = probability < 1 ? ` ${roundedProbability(probability)}` : '';
  if (see !== null) add([`${nameOf(animal)}${odds}, see ${see}`], '', 'see');
  else
    add([`${nameOf(animal)}${odds}`, ...(animal.code && animal.number !== null ? [animal.number] : [])], ' ', 'name');
  for (const other of others) add([`or ${nameOf(other.animal)} ${roundedProbability(other.probability)}`], '', 'odds');
  if (see !== null) return lines;
  if (depth && !animal.isPrivate) add(inbreedingInWords(animal.inbreeding, depth, letters), ', ', 'figure');
  if (slot.source !== null) add([slot.source], '', 'origin');
  else if (animal.hatched)
    add(letters < animal.hatched.length + 8 ? [animal.hatched] : [`hatched ${animal.hatched}`], '', 'origin');
  if (slot.above === 'unknown') add(['nobody knows its parents'], '', 'origin');
  if (slot.above === 'more') add(['more is known above'], '', 'origin');
  return lines;
}

/** Width of the bar of standings, in millimetres: behind a name, or on a line of its own. */
export const barWidth = { inLine: 5, own: 22 } as const;

/** Where the text of a slot begins: right of its number and symbol, in millimetres. */
export function textFrom(type: number): number {
  return type * 2.7;
}

/** Where not all candidates have room, the last line says how many more there are. */
function fitted(lines: SlotLine[], room: number): SlotLine[] {
  if (lines.length <= room) return lines;
  const odds = lines.filter(({ kind }) => kind === 'odds').length;
  const kept = lines.slice(0, room);
  const shown = kept.filter(({ kind }) => kind === 'odds').length;
  if (shown === odds || room < 2) return kept;
  return [...kept.slice(0, -1), { text: `or ${odds - shown + 1} others`, kind: 'odds' }];
}
