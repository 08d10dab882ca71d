import type { Visibility } from '$shared/vocabulary.ts';
import { word } from '../words/word.ts';

/** What each visibility means, in a few words. */
export const visibilityWords: Record<Visibility, string> = {
  private:
    'Only you and the registrars see it, and who gave it to you or is offered it. It still counts in kinship; others meet it as “private animal”.',
  club: 'Every member of the club sees it.',
  public: 'Anyone may see it, where the club is open to readers; your name is not shown to them.',
};

/** The same for a remark, which registrars do not see either. */
export const remarkVisibilityWords: Record<Visibility, string> = {
  private: 'Only you see this remark.',
  club: 'Every member who sees the animal sees this remark.',
  public: 'Whoever may see the animal sees this remark.',
};

/** The same for a source. */
export const sourceVisibilityWords: Record<Visibility, string> = {
  private: 'Only you and the registrars see it. Others meet it as “private source”.',
  club: visibilityWords.club,
  public: visibilityWords.public,
};

export const visibilityChoices: readonly { value: Visibility; label: string }[] = [
  { value: 'private', label: word('private') },
  { value: 'club', label: word('club') },
  { value: 'public', label: word('public') },
];

/** Who sees a record, as a record says it. */
export const visibilityReaders: Record<Visibility, string> = {
  private: 'its keeper and registrars',
  club: 'every member',
  public: word('anyone'),
};
