import type { SourceKind, Visibility } from '$shared/vocabulary.ts';
import type { Source } from '../api/types.ts';
import { dateProblem } from '../ui/typed-dates.ts';

const texts = [
  'code',
  'date',
  'receivedFrom',
  'receivedBy',
  'countryOfExport',
  'labelAsReceived',
  'labelNote',
  'notes',
] as const;

/** A source while it is typed: a new one, or one that is corrected. */
export class SourceDraft {
  kind = $state<SourceKind>('purchase');
  visibility = $state<Visibility>('club');
  said = $state(Object.fromEntries(texts.map((name) => [name, ''])) as Record<(typeof texts)[number], string>);
  permits = $state('');
  baseKinship = $state('0');
  /** What was recorded when the form was opened: only what is said otherwise is sent. */
  readonly #before: Readonly<Record<string, unknown>>;

  static readonly pointers = new RegExp(`^/(kind|visibility|permitReferences|baseKinship|${texts.join('|')})(/\\d+)?$`);

  constructor(source?: Source) {
    if (source) {
      this.kind = source.kind;
      this.visibility = source.visibility;
      for (const name of texts) this.said[name] = source[name] ?? '';
      this.permits = source.permitReferences.join(', ');
      this.baseKinship = String(source.baseKinship);
    }
    this.#before = source ? this.body() : {};
  }

  problems(): Record<string, string> {
    const found: Record<string, string> = {};
    const wrongDate = dateProblem(this.said.date);
    if (wrongDate) found['/date'] = wrongDate;
    if (!(this.#base >= 0 && this.#base <= 1))
      found['/baseKinship'] = 'Write a number from 0 (unrelated) to 1; full siblings are 0.25.';
    const country = this.said.countryOfExport.trim();
    if (country !== '' && !/^[A-Za-z]{2}$/.test(country))
      found['/countryOfExport'] = 'Write the two letters of the country, such as EC.';
    return found;
  }

  /** All of it, as the service takes it. */
  body(): Record<string, unknown> {
    return {
      kind: this.kind,
      visibility: this.visibility,
      ...Object.fromEntries(texts.map((name) => [name, this.said[name].trim() || null])),
      countryOfExport: this.said.countryOfExport.trim().toUpperCase() || null,
      permitReferences: this.permits
        .split(',')
        .map((permit) => permit.trim())
        .filter((permit) => permit !== ''),
      baseKinship: this.#base,
    };
  }

  /** What is said otherwise than it was recorded; what nobody touched is left to others. */
  changes(): Record<string, unknown> {
    return Object.fromEntries(
      Object.entries(this.body()).filter(
        ([name, value]) => JSON.stringify(value) !== JSON.stringify(this.#before[name]),
      ),
    );
  }

  get #base(): number {
    const typed = this.baseKinship.trim().replace(',', '.');
    return typed === '' ? NaN : Number(typed);
  }
}
