import { dateInWords } from '$shared/date-words.ts';
import type { PhotographView } from '$shared/vocabulary.ts';
import type { Photograph } from '../api/types.ts';
import { word } from '../words/word.ts';

const views: Readonly<Record<PhotographView, string>> = {
  back: word('back'),
  side: word('side'),
  belly: word('belly'),
  other: 'another side',
};

/** The sides of an animal, as one chooses among them. */
export const viewOptions = (Object.keys(views) as PhotographView[]).map((value) => ({ value, label: views[value] }));

/** What stands under a photograph: when and which side. */
export function captionOf({ view, takenOn }: Pick<Photograph, 'view' | 'takenOn'>): string {
  return `${views[view]}, ${takenOn === null ? 'nobody knows when' : dateInWords(takenOn)}`;
}

/** What a photograph is, for whoever does not see it. */
export function alternativeOf(photograph: Pick<Photograph, 'view' | 'takenOn' | 'notes'>, name: string): string {
  const { view, takenOn, notes } = photograph;
  const side = view === 'other' ? name : `the ${views[view]} of ${name}`;
  const when = takenOn === null ? '' : `, ${dateInWords(takenOn)}`;
  return `Photograph of ${side}${when}${notes ? `. ${notes}` : ''}`;
}

/** The address of the picture of a photograph. */
export function pictureAddress({ id }: Pick<Photograph, 'id'>, size: 'small' | 'whole'): string {
  return `/api/v1/photographs/${encodeURIComponent(id)}/file?size=${size}`;
}
