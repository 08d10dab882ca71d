import { kept } from '../ui/kept.ts';

/** The languages of the interface, each by its own name. A further one is a catalogue beside the others and a line here. */
export const languages = { en: 'English', es: 'Español' } as const;

export type Language = keyof typeof languages;

const storageKey = 'linekeeper.language';

const isLanguage = (code: string | null | undefined): code is Language =>
  code !== null && code !== undefined && Object.hasOwn(languages, code);

/** What was chosen on this device, or else the first language of the browser that there is a catalogue for. */
function languageOfReader(): Language {
  const chosen = kept.get(storageKey);
  if (isLanguage(chosen)) return chosen;
  const wished =
    typeof navigator === 'undefined' ? [] : navigator.languages.map((tag) => tag.slice(0, 2).toLowerCase());
  return wished.find(isLanguage) ?? 'en';
}

/** The language of this visit. It is settled once: another choice loads the page anew. */
export const language: Language = languageOfReader();

/** The tag that dates are written by. */
export const writingTag: string = { en: 'en-GB', es: 'es' }[language];

/** What stands between the whole of a number and its decimals. */
export const decimalSign: string = { en: '.', es: ',' }[language];

/** Keeps the choice on this device and loads the page in that language. */
export function chooseLanguage(chosen: Language): void {
  kept.set(storageKey, chosen);
  location.reload();
}
