// The maps here are replaced whole, never changed in place.
/* eslint-disable svelte/prefer-svelte-reactivity */
import { api } from '../api/client.ts';
import { ProblemError } from '../api/problem.ts';
import type { Figures, Group, GroupMember, Individual, IndividualItem, Page, Ref } from '../api/types.ts';
import { counted } from '../ui/figures.ts';
import { groupMost, groupQuestion, type GroupWish } from './group-wish.ts';

/** A group as it is asked about; what is shown stays until the next answer has come. */
export class GroupReading {
  group = $state.raw<Group | null>(null);
  figures = $state.raw<ReadonlyMap<string, Figures>>(new Map());
  /** Animals that are known by now, by what the address calls them. */
  known = $state.raw<ReadonlyMap<string, Ref>>(new Map());
  /** What was wrong, a sentence each. */
  problems = $state.raw<readonly string[]>([]);
  /** What was left out of a list that was too long. */
  notice = $state('');
  busy = $state(false);
  #asking: AbortController | null = null;

  /** All animals of the last answer. */
  readonly members: readonly GroupMember[] = $derived([
    ...(this.group?.males ?? []),
    ...(this.group?.females ?? []),
    ...(this.group?.unsexed ?? []),
  ]);

  /** Asks about the animals of a wish; with fewer than two there is nothing to ask, only names. */
  async read(wish: GroupWish): Promise<void> {
    await this.#guarded(async (signal) => {
      try {
        if (wish.animals.length >= 2) await this.#ask(wish, signal);
        else this.group = null;
      } finally {
        // a refused group has no answer that names its animals
        if (!signal.aborted) await this.#learn(wish.animals, signal).catch(onlyProblems);
      }
    });
  }

  /** The living animals of a line whose sex is known, the newest first, as many as a group may be chosen from: their numbers. */
  async ofLine(line: string): Promise<string[]> {
    let numbers: string[] = [];
    await this.#guarded(async (signal) => {
      const query = { line, status: 'alive', sort: 'hatched', order: 'desc', limit: 200, total: true };
      const pages = await Promise.all(
        ['male', 'female'].map((sex) =>
          api.get<Page<IndividualItem>>('/individuals', { query: { ...query, sex }, signal }),
        ),
      );
      const all = pages.flatMap(({ items }) => items);
      const taken = newestFirst(all).slice(0, groupMost);
      const total = pages.reduce((sum, page) => sum + (page.total ?? page.items.length), 0);
      this.notice =
        total > taken.length
          ? `Of ${counted(total, ['living animal', 'living animals'])} of known sex the ${taken.length} that hatched last were taken; a list holds no more.`
          : '';
      this.#remember(taken);
      numbers = taken.map(({ number }) => number);
      if (numbers.length === 0) throw new ProblemError(0, { detail: 'No living animal of this line has a known sex.' });
    });
    return numbers;
  }

  /** Keeps what is known of an animal, so that it need not be read. */
  remember(animal: Ref): void {
    this.#remember([animal]);
  }

  /** Gives up what is asked for: nobody looks any more. */
  close(): void {
    this.#asking?.abort();
  }

  async #ask(wish: GroupWish, signal: AbortSignal): Promise<void> {
    const [group, figures] = await Promise.all([
      api.ask<Group>('/match/group', groupQuestion(wish), { signal }),
      api.ask<{ items: Figures[] }>('/lineage/figures', { individuals: wish.animals }, { signal }),
    ]);
    if (signal.aborted) return;
    this.group = group;
    this.figures = new Map(figures.items.map((item) => [item.id, item]));
    this.#remember(this.members);
  }

  /** Reads the names of animals that no answer named yet. */
  async #learn(animals: readonly string[], signal: AbortSignal): Promise<void> {
    const unknown = animals.filter((text) => !this.known.has(text));
    const read = async (text: string): Promise<readonly Ref[]> => {
      if (isId(text)) return [await api.get<Individual>(`/individuals/${text}`, { signal })];
      return (await api.get<Page<IndividualItem>>('/individuals', { query: { number: text, limit: 1 }, signal })).items;
    };
    this.#remember((await Promise.all(unknown.map(read))).flat());
  }

  #remember(animals: readonly Ref[]): void {
    const named = animals.flatMap((animal): [string, Ref][] => [
      [animal.id, animal],
      ...(animal.number === null ? [] : [[animal.number, animal] as [string, Ref]]),
    ]);
    this.known = new Map([...this.known, ...named]);
  }

  async #guarded(work: (signal: AbortSignal) => Promise<void>): Promise<void> {
    this.#asking?.abort();
    const asking = new AbortController();
    this.#asking = asking;
    this.busy = true;
    try {
      await work(asking.signal);
      if (!asking.signal.aborted) this.problems = [];
    } catch (error) {
      if (asking.signal.aborted) return;
      if (!(error instanceof ProblemError)) throw error;
      this.problems = [error.detail, ...error.errors.map(({ detail }) => detail)].filter(
        (detail, place, all) => all.indexOf(detail) === place,
      );
      this.group = null;
    } finally {
      if (this.#asking === asking) this.busy = false;
    }
  }
}

/** Lets pass that a name could not be read: the number is shown instead. */
const onlyProblems = (error: unknown): void => {
  if (!(error instanceof ProblemError) && !(error instanceof DOMException)) throw error;
};

const isId = (text: string): boolean => /^[0-9a-f-]{36}$/i.test(text);

const newestFirst = (animals: readonly IndividualItem[]): IndividualItem[] =>
  [...animals].sort(
    (one, other) =>
      (other.hatched ?? '').localeCompare(one.hatched ?? '') || one.number.localeCompare(other.number, 'en'),
  );
