import type { ObservationKind, Visibility } from '$shared/vocabulary.ts';
import { today } from '../ui/dates.ts';
import { dateProblem } from '../ui/typed-dates.ts';

/** The form as it is filled in, as plain values. */
export type CapturedNote = Pick<NoteDraft, 'kind' | 'observedOn' | 'text' | 'visibility' | 'length' | 'mass'>;

/** A remark while it is written: what was seen, and what was measured. */
export class NoteDraft {
  kind = $state<ObservationKind>('note');
  observedOn = $state(today());
  text = $state('');
  visibility = $state<Visibility>('club');
  length = $state('');
  mass = $state('');

  static readonly pointers = ['/kind', '/observedOn', '/text', '/svlMm', '/massG', '/visibility'];

  constructor(captured?: CapturedNote) {
    Object.assign(this, captured);
  }

  problems(): Record<string, string> {
    const found: Record<string, string | undefined> = {
      '/observedOn': dateProblem(this.observedOn),
      '/svlMm': Number.isNaN(number(this.length)) ? 'Write millimetres as a number, such as 22.4.' : undefined,
      '/massG': Number.isNaN(number(this.mass)) ? 'Write grams as a number, such as 1.9.' : undefined,
      '/text':
        this.text.trim() + this.length.trim() + this.mass.trim() === ''
          ? 'Write what was seen, or a measurement.'
          : undefined,
    };
    return Object.fromEntries(Object.entries(found).filter((one): one is [string, string] => one[1] !== undefined));
  }

  /** What is said, as the service takes it; what it is about is added by whoever sends it. */
  body(): Record<string, unknown> {
    const [svlMm, massG] = [number(this.length), number(this.mass)];
    return {
      kind: this.kind === 'note' && (svlMm !== null || massG !== null) ? 'measurement' : this.kind,
      observedOn: this.observedOn.trim() || null,
      text: this.text.trim() || null,
      svlMm,
      massG,
      visibility: this.visibility,
    };
  }

  capture(): CapturedNote {
    const { kind, observedOn, text, visibility, length, mass } = this;
    return { kind, observedOn, text, visibility, length, mass };
  }
}

const number = (typed: string): number | null => (typed.trim() === '' ? null : Number(typed.trim().replace(',', '.')));
