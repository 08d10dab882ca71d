import { generationChoices } from '../charts/ancestors/ancestor-view.svelte.ts';
import { bracketGenerations, bracketType, leastType } from '../charts/bracket/bracket-layout.ts';
import { paperSizes } from '../labels/label-paper.ts';

/** What a pedigree is printed as, and on what. */
export interface SheetChoice {
  form: 'bracket' | 'time';
  generations: number;
  paper: 'a4' | 'letter';
  stands: 'upright' | 'across';
}

export const usualSheet: SheetChoice = { form: 'bracket', generations: 4, paper: 'a4', stands: 'across' };

/** Margins of the paper, and what stands above and below the drawing, in millimetres. */
export const sheetParts = { margin: 10, head: 21, foot: 24 } as const;

/** Size of the paper as it lies in front of the reader, in millimetres. */
export function paperOf({ paper, stands }: SheetChoice): { width: number; height: number } {
  const { width, height } = paperSizes[paper];
  return stands === 'upright' ? { width, height } : { width: height, height: width };
}

/** Room of the drawing on it, in millimetres. */
export function roomOf(choice: SheetChoice): { width: number; height: number } {
  const { width, height } = paperOf(choice);
  const { margin, head, foot } = sheetParts;
  return { width: width - 2 * margin, height: height - 2 * margin - head - foot };
}

/** The generations that can be chosen: a bracket has no more than can be written in type that is still read. */
export function generationsFor(choice: SheetChoice): readonly number[] {
  if (choice.form === 'time') return generationChoices;
  const room = roomOf(choice);
  return bracketGenerations.filter((generations) => bracketType(generations, room) >= leastType);
}

/** The choice that an address names; what it does not name, or cannot be had, is as usual. */
export function sheetChoiceIn(params: URLSearchParams): SheetChoice {
  const choice: SheetChoice = {
    form: params.get('form') === 'time' ? 'time' : 'bracket',
    generations: Number(params.get('generations') ?? usualSheet.generations),
    paper: params.get('paper') === 'letter' ? 'letter' : 'a4',
    stands: params.get('stands') === 'upright' ? 'upright' : 'across',
  };
  return fitted(choice);
}

/** The same with as many generations as can be had, the nearest to those that are asked for. */
export function fitted(choice: SheetChoice): SheetChoice {
  const can = generationsFor(choice);
  const away = (generations: number): number => Math.abs(generations - choice.generations);
  const [nearest = usualSheet.generations] = [...can].sort((a, b) => away(a) - away(b));
  const generations = Number.isFinite(choice.generations) ? nearest : usualSheet.generations;
  return { ...choice, generations };
}

/** The query of an address that names a choice. */
export function sheetQuery(choice: SheetChoice): string {
  return String(
    new URLSearchParams({
      form: choice.form,
      generations: String(choice.generations),
      paper: choice.paper,
      stands: choice.stands,
    }),
  );
}
