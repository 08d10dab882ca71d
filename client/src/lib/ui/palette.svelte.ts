import { goto } from '$app/navigation';
import { nameOf } from '../keys/action.ts';
import { AnimalSearch } from '../records/animal-search.svelte.ts';
import { actionsAbout, actionsHere, fits, type Entry } from './palette-entries.ts';
import { PaletteRecords } from './palette-records.svelte.ts';
import { recentAnimals, rememberAnimal, type RecentAnimal } from './recent-animals.ts';

/** Finds an animal, another record or an action by a few letters; then says what can be done with the animal. */
class PaletteState {
  open = $state(false);
  text = $state('');
  at = $state(0);
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
      ? [{ kind: 'about', key: 'about', words: `What with ${nameOf(first)}?`, animal: first }]
      : [];
    const records = typed === '' ? [] : this.records.items;
    return [...animals, ...about, ...records, ...this.#here.filter((action) => fits(action, typed))];
  });

  readonly current = $derived(Math.min(this.at, this.entries.length - 1));
  /** What is typed is being looked for, and nothing is known of it yet. */
  readonly isLooking = $derived(
    this.about === null &&
      this.text.trim() !== '' &&
      this.search.answered !== this.text.trim() &&
      this.search.problem === '',
  );

  show(): void {
    this.text = '';
    this.at = 0;
    this.about = null;
    this.recent = recentAnimals();
    this.#here = actionsHere();
    this.open = true;
  }

  type(): void {
    this.at = 0;
    if (this.about) return;
    this.records.ask(this.text.trim());
    if (this.text.trim() !== '') this.search.ask(this.text);
  }

  move(step: 1 | -1): void {
    const count = this.entries.length;
    if (count > 0) this.at = (this.current + step + count) % count;
  }

  /** The second step: what with the animal of the current line? False where that line is no animal. */
  ask(): boolean {
    const entry = this.entries[this.current];
    if (entry?.kind !== 'animal' && entry?.kind !== 'about') return false;
    this.#askAbout(entry.animal);
    return true;
  }

  /** Back to the search, with the animal still found. False where there is no second step to leave. */
  back(): boolean {
    if (!this.about) return false;
    this.text = '';
    this.recent = [this.about, ...this.recent.filter(({ id }) => id !== this.about?.id)];
    this.about = null;
    this.at = 0;
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
    this.text = '';
    this.at = 0;
  }
}

export const palette = new PaletteState();
