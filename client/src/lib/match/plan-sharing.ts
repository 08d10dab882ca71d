import { word } from '../words/word.ts';

/** Who may see a kept plan. */
export const planSharing: readonly { value: 'private' | 'club'; label: string; beside: string }[] = [
  { value: 'private', label: word('myself'), beside: 'and the registrars' },
  { value: 'club', label: 'the club', beside: 'every member' },
];
