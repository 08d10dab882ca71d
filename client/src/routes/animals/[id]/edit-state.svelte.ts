// Maps and sets here are replaced whole, never changed in place.
/* eslint-disable svelte/prefer-svelte-reactivity */
import { ProblemError } from '$lib/api/problem.ts';
import type { Individual } from '$lib/api/types.ts';
import { AnimalDraft } from '$lib/records/animal-draft.svelte.ts';
import { RegisterLists } from '$lib/records/register-lists.svelte.ts';
import { FormState } from '$lib/ui/form-state.svelte.ts';
import { fieldInWords } from '$lib/journal/journal-words.ts';
import type { AnimalRecord } from './animal-record.svelte.ts';

type Body = Record<string, string | null>;

/** One field that two people changed to different values. */
export interface Clash {
  field: string;
  words: string;
  mine: string;
  theirs: string;
  keepMine: boolean;
}

/** Editing one record in place: what changed, and what to do when somebody else was quicker. */
export class EditState {
  readonly draft = new AnimalDraft();
  readonly lists = new RegisterLists();
  readonly form = new FormState((pointer) => AnimalDraft.pointers.includes(pointer));
  clashes = $state<Clash[]>([]);
  readonly #record: AnimalRecord;
  #before: Body;
  #version: number;
  #theirs: Individual | null = null;

  constructor(record: AnimalRecord) {
    this.#record = record;
    this.draft.read(record.now);
    this.#before = this.draft.body();
    this.#version = record.now.version;
  }

  /** Reads the lists to choose from. The record's own clutch and source are offered even if they are far down. */
  async start(): Promise<void> {
    await this.form.run(() => this.lists.read());
  }

  #changed(): Body {
    const now = this.draft.body();
    return Object.fromEntries(Object.entries(now).filter(([field, value]) => value !== this.#before[field]));
  }

  /** Writes what was changed; true when the record is as wished. */
  async write(): Promise<boolean> {
    const problems = this.draft.problems();
    if (Object.keys(problems).length > 0) {
      await this.form.refuse(problems);
      return false;
    }
    const changed = this.#changed();
    if (Object.keys(changed).length === 0) return true;
    const done = await this.form.run(async () => {
      try {
        await this.#record.change(changed, this.#version);
        return true;
      } catch (error) {
        if (!(error instanceof ProblemError) || error.status !== 412) throw error;
        this.#compare(error.document['current'] as Individual, changed);
        return false;
      }
    });
    // Nobody is asked where the two changed different fields.
    if (this.#theirs && this.clashes.length === 0) return this.settle();
    return done ?? false;
  }

  /** Somebody changed the record meanwhile: fields that only one side touched are settled, the others are asked. */
  #compare(current: Individual, mine: Body): void {
    const their = new AnimalDraft();
    their.read(current);
    const theirs = their.body();
    this.#theirs = current;
    this.clashes = Object.keys(mine)
      .filter((field) => theirs[field] !== this.#before[field] && theirs[field] !== mine[field])
      .map((field) => ({
        field,
        words: fieldInWords(field),
        mine: this.#inWords(field, mine[field]),
        theirs: this.#inWords(field, theirs[field]),
        keepMine: true,
      }));
  }

  /** Takes the answers to the clashes: the form now starts from their record, with my kept values on top. */
  async settle(): Promise<boolean> {
    const theirs = this.#theirs;
    if (!theirs) return false;
    const given = new Set(this.clashes.filter((clash) => !clash.keepMine).map((clash) => clash.field));
    const kept = Object.entries(this.#changed()).filter(([field]) => !given.has(field));
    this.#record.take(theirs);
    const base = new AnimalDraft();
    base.read(theirs);
    this.#before = base.body();
    this.#version = theirs.version;
    this.draft.read(theirs);
    for (const [field, value] of kept) this.#put(field, value);
    this.#theirs = null;
    this.clashes = [];
    return this.write();
  }

  #put(field: string, value: string | null): void {
    if (field === 'sourceId' && value !== null) this.draft.origin = 'source';
    if (field === 'clutchId' && value !== null) this.draft.origin = 'clutch';
    Object.assign(this.draft, { [field]: value ?? '' });
  }

  #inWords(field: string, value: string | null | undefined): string {
    if (value === null || value === undefined) return 'not known';
    const lists: Record<string, { id: string; words: string }[]> = {
      lineId: this.lists.lines.map((line) => ({ id: line.id, words: line.name })),
      speciesId: this.lists.species.map((species) => ({ id: species.id, words: species.scientificName })),
      sourceId: this.lists.sources.map((source) => ({ id: source.id, words: source.title })),
      clutchId: this.lists.clutches.map((clutch) => ({ id: clutch.id, words: clutch.title })),
    };
    return lists[field]?.find((one) => one.id === value)?.words ?? value;
  }
}
