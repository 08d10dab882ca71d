import { tick } from 'svelte';
import { ProblemError, type ProblemPlace } from '../api/problem.ts';

/**
 * What a form knows of its errors. The places that the service names land on the fields of the same pointer; what has no
 * field here is told above the form. Nothing that was typed is touched.
 */
export class FormState {
  busy = $state(false);
  /** What to say above the form; empty while all is well. */
  summary = $state('');
  errors = $state<Record<string, string>>({});
  /** Errors that no field of this form shows. */
  others = $state<ProblemPlace[]>([]);
  /** Standing records that a withdrawal was refused for. */
  dependants = $state<{ kind: string; id: string; name: string; isPrivate?: boolean }[]>([]);
  readonly #shown: (pointer: string) => boolean;
  #form: HTMLElement | null = null;

  /** `shown` says whether the form has a field for a pointer such as `/hatched` or `/sires/0/weight`. */
  constructor(shown: (pointer: string) => boolean = () => true) {
    this.#shown = shown;
  }

  /** The element whose first wrong field gets the focus: `<form {@attach form.attach}>`. */
  attach = (element: HTMLElement): (() => void) => {
    this.#form = element;
    return () => (this.#form = null);
  };

  /** Runs one write; a refusal of the service becomes errors of the form. Gives undefined when it was refused. */
  async run<T>(write: () => Promise<T>): Promise<T | undefined> {
    if (this.busy) return undefined;
    this.busy = true;
    this.clear();
    try {
      return await write();
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      await this.take(error);
      return undefined;
    } finally {
      this.busy = false;
    }
  }

  /** Puts the places of a problem on the fields and the focus on the first of them. */
  async take(problem: ProblemError): Promise<void> {
    this.summary = problem.detail;
    const fields: Record<string, string> = {};
    const others: ProblemPlace[] = [];
    for (const place of problem.errors) {
      if (place.pointer && this.#shown(place.pointer)) fields[place.pointer] ??= place.detail;
      else others.push(place);
    }
    this.errors = fields;
    this.others = others;
    const { dependants } = problem.document;
    this.dependants = Array.isArray(dependants) ? (dependants as typeof this.dependants) : [];
    await this.focusFirst();
  }

  /** Refuses on our side: the same places, found before asking the service. */
  async refuse(fields: Record<string, string>): Promise<void> {
    // Once without any, so that a field whose error was mended away shows the same error anew.
    this.clear();
    await tick();
    this.errors = fields;
    this.summary = 'Not written yet: see the marked places.';
    await this.focusFirst();
  }

  clear(): void {
    this.summary = '';
    this.errors = {};
    this.others = [];
    this.dependants = [];
  }

  async focusFirst(): Promise<void> {
    await tick();
    const wrong = this.#form?.querySelector<HTMLElement>('[aria-invalid="true"], fieldset:has(> .msg) input');
    (wrong ?? this.#form?.querySelector<HTMLElement>('[data-form-summary]'))?.focus();
  }
}
