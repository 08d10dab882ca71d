import { daysFrom } from '../../today/days.ts';
import { daysInWords } from '../../ui/dates.ts';
import { counted } from '../../ui/figures.ts';
import type { TimedClutch } from './clutch-stations.ts';
import type { PlacedStation, TimelineLayout } from './timeline-layout.ts';

/** Words beside the drawing, at a height where they touch no others. */
export interface TimelineLabel {
  readonly key: string;
  readonly lines: readonly string[];
  /** What it tells of, and where the words stand. */
  readonly y: number;
  readonly top: number;
  readonly bottom: number;
}

/** Of one line, and between two labels; pixels. */
const LINE = 19;
const AIR = 8;
/** Widths of a letter, rather too wide than too narrow. */
const LETTER = 7.2;
const BOLD = 8.2;

/** What is said beside a timeline, from the top down, in lines of `width` pixels; not moved apart yet. */
export function timelineLabels(
  { expected }: TimedClutch,
  stations: readonly PlacedStation[],
  { window, now }: Pick<TimelineLayout, 'window' | 'now'>,
  on: string,
  width: number,
): TimelineLabel[] {
  const label = (key: string, lines: string[], y: number): TimelineLabel => labelOf(key, lines, y, width);
  const labels = stations.map(({ kind, what, when, after, y }) => label(kind, [what, when, after], y));
  if (expected && window)
    labels.push(
      label(
        'expected',
        [
          expected.event === 'hatching' ? 'Expected to hatch' : 'Expected to leave the water',
          daysInWords(expected.from, expected.to),
        ],
        (window.top + window.bottom) / 2,
      ),
    );
  if (now !== null) labels.push(label('now', ['Today', expected ? dueInWords(expected.to, on) : ''], now));
  return labels.sort((one, other) => one.y - other.y);
}

function labelOf(key: string, lines: string[], y: number, width: number): TimelineLabel {
  const said = lines.filter((line) => line !== '');
  const top = y - LINE / 2;
  const rows = said.reduce((sum, line, at) => sum + rowsOf(line, width / (at === 0 ? BOLD : LETTER)), 0);
  return { key, lines: said, y, top, bottom: top + rows * LINE + AIR };
}

/** How many rows a text takes of so many letters each; a word is not parted. */
function rowsOf(text: string, letters: number): number {
  let rows = 1;
  let taken = 0;
  for (const { length } of text.split(/[ –-]/)) {
    if (taken > 0 && taken + 1 + length > letters) [rows, taken] = [rows + 1, length];
    else taken += length + (taken > 0 ? 1 : 0);
  }
  return rows;
}

function dueInWords(last: string, on: string): string {
  const late = daysFrom(last, on);
  return late > 0 ? `${counted(late, ['day', 'days'])} late` : '';
}

/** Moves labels apart that would touch, those that touch about their common middle; none above the top of the drawing. */
export function separate(labels: readonly TimelineLabel[]): TimelineLabel[] {
  const groups: { top: number; height: number; members: TimelineLabel[] }[] = [];
  for (const one of labels) {
    let group = { top: Math.max(0, one.top), height: one.bottom - one.top, members: [one] };
    for (let above = groups.at(-1); above && above.top + above.height > group.top; above = groups.at(-1)) {
      groups.pop();
      group = together([...above.members, ...group.members]);
    }
    groups.push(group);
  }
  return groups.flatMap(({ top, members }) => {
    let next = top;
    return members.map((member) => {
      const placed = { ...member, top: next, bottom: next + member.bottom - member.top };
      next = placed.bottom;
      return placed;
    });
  });
}

/** Labels one right below the other, each as near to its place as the others allow on the mean. */
function together(members: TimelineLabel[]): { top: number; height: number; members: TimelineLabel[] } {
  let height = 0;
  let wishes = 0;
  for (const { top, bottom } of members) {
    wishes += top - height;
    height += bottom - top;
  }
  return { top: Math.max(0, wishes / members.length), height, members };
}
