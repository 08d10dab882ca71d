import { goto } from '$app/navigation';
import { nameOf } from '../keys/action.ts';
import { AnimalSearch } from '../records/animal-search.svelte.ts';
import { FoundChoice } from './found-choice.svelte.ts';
import { actionsAbout, actionsHere, fits, type Entry } from './palette-entries.ts';
import { PaletteRecords } from './palette-records.svelte.ts';
import { recentAnimals, rememberAnimal, type RecentAnimal } from './recent-animals.ts';

/** Finds an animal, another record or an action by a few letters; then says what can be done with the animal. */
class PaletteState {
  open = $state(false);
  text = $state('');
  /** The animal that it was asked about: the second step. */
  about = $state.raw<RecentAnimal | null>(null);
  recent = $state.raw<RecentAnimal[]>([]);
  #here = $state.raw<Extract<Entry, { kind: 'action' }>[]>([]);
  readonly search = new AnimalSearch();
  readonly records = new PaletteRecords();

  readonly entries = $derived.by((): Entry[] => {
    const typed = this.text.trim();
    if (this.about) return actionsAbout(this.about).filter((action) => fits(action, typed));
    const found: readonly RecentAnimal[] = typed === '' ? this.recent : this.search.items;
    const animals = found.map((animal): Entry => ({ kind: 'animal', key: animal.id, animal }));
    const [first] = found;
    const about: Entry[] = first
      ? [{ kind: 'about', key: `about-${first.id}`, words: `What with ${nameOf(first)}?`, animal: first }]
      : [];
    const records = typed === '' ? [] : this.records.items;
    return [...animals, ...about, ...records, ...this.#here.filter((action) => fits(action, typed))];
  });

  /** What is typed is being looked for, and what comes first is not known yet: other records come after the animals. */
  readonly isLooking = $derived(
    this.about === null &&
      this.text.trim() !== '' &&
      (this.search.isLooking || (this.search.items.length === 0 && this.records.isLooking)),
  );
  /** The current line, and what waits for it. */
  readonly choice = new FoundChoice<Entry>(
    () => ({ items: this.entries, isLooking: this.isLooking, meansFirst: true }),
    ({ key }) => key,
  );

  show(): void {
    this.#from('');
    this.about = null;
    this.recent = recentAnimals();
    this.#here = actionsHere();
    this.open = true;
  }

  type(): void {
    this.#from(this.text);
    if (this.about) return;
    this.records.ask(this.text.trim());
    if (this.text.trim() !== '') this.search.ask(this.text);
  }

  /** Takes a key that is pressed before its field is there: what is typed then is for it. */
  takeKey(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Escape') this.open = false;
    else if (event.key === 'Enter') this.enter();
    else if (event.key.length === 1) {
      this.text += event.key;
      this.type();
    } else return;
    event.preventDefault();
  }

  /** Does what the current line says. */
  enter(): void {
    this.choice.whenFound(() => this.open && this.run(this.choice.current));
  }

  /** The second step, for the animal of the current line. False, and nothing, where that line is no animal. */
  askOn(): boolean {
    if (!this.isLooking) return this.#ask();
    this.choice.whenFound(() => this.open && this.#ask());
    return true;
  }

  #ask(): boolean {
    const entry = this.choice.current;
    if (entry?.kind !== 'animal' && entry?.kind !== 'about') return false;
    this.#askAbout(entry.animal);
    return true;
  }

  /** Back to the search, with the animal still found. False where there is no second step to leave. */
  back(): boolean {
    if (!this.about) return false;
    this.#from('');
    this.recent = [this.about, ...this.recent.filter(({ id }) => id !== this.about?.id)];
    this.about = null;
    return true;
  }

  /** Does what an entry says and closes, or asks on. */
  run(entry: Entry | undefined): void {
    if (!entry) return;
    if (entry.kind === 'about') {
      this.#askAbout(entry.animal);
      return;
    }
    this.open = false;
    const animal = entry.kind === 'animal' ? entry.animal : this.about;
    if (animal) rememberAnimal(animal);
    if (entry.kind === 'action') entry.run();
    else void goto(entry.kind === 'record' ? entry.address : `/animals/${entry.animal.id}`);
  }

  #askAbout(animal: RecentAnimal): void {
    this.about = animal;
    this.#from('');
  }

  /** Begins anew at the first line that fits a text. */
  #from(text: string): void {
    this.text = text;
    this.choice.begin();
  }
}

export const palette = new PaletteState();
