// Maps and sets here are replaced whole, never changed in place.
/* eslint-disable svelte/prefer-svelte-reactivity */
import { invalidate } from '$app/navigation';
import { api } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type { Individual, Inbreeding, Lineage, StandingShare } from '$lib/api/types.ts';
import { fieldInWords } from '$lib/journal/journal-words.ts';
import type { ReadPedigree } from '$lib/charts/ancestors/ancestor-view.svelte.ts';
import type { PedigreeView } from '$lib/charts/ancestors/pedigree-view.ts';
import { session } from '$lib/people/session.svelte.ts';
import { undoOffer } from '$lib/ui/undo.svelte.ts';
import type { Figures } from './+page.ts';
import { AnimalLoops } from './animal-loops.svelte.ts';

/** Figures of the young of one clutch. */
export interface YoungFigures {
  /** Generations above the young: no F stands without it. */
  depth: number;
  inbreeding: Inbreeding;
  standings: StandingShare[];
}

/** One animal as its page knows it: the record, what the pedigree says of it, and what is being done to it. Another animal is another one of these. */
export class AnimalRecord {
  now = $state.raw<Individual>() as Individual;
  lineage = $state.raw<Lineage | null>(null);
  /** By clutch id: what all young of the clutch share. */
  youngFigures = $state.raw<Map<string, YoungFigures>>(new Map());
  problem = $state('');
  /** What F arises through; read with the figures. */
  readonly loops = new AnimalLoops();
  isEditing = $state(false);
  /** Reads the ancestors. Every change that may touch them puts a new function here, so that the chart is read again. */
  readPedigree = $state.raw<ReadPedigree>() as ReadPedigree;

  readonly path = $derived(`/individuals/${this.now.id}`);
  readonly name = $derived(this.now.code ?? this.now.number);

  #readings = 0;

  constructor(animal: Individual, figures: Figures | Promise<Figures>) {
    this.now = animal;
    this.#renewPedigree();
    if (!(figures instanceof Promise)) this.#takeFigures(figures);
  }

  /** Shows the record as it is now. */
  take(animal: Individual): void {
    this.now = animal;
  }

  /** Shows the record with what the pedigree says of it, as the page has read them, for the first time or again. */
  async takeWhole(animal: Individual, toCome: Figures | Promise<Figures>): Promise<void> {
    const reading = ++this.#readings;
    if (animal !== this.now) this.#renewPedigree();
    this.take(animal);
    const figures = toCome instanceof Promise ? await toCome : toCome;
    // the page was read again meanwhile
    if (reading !== this.#readings) return;
    this.#takeFigures(figures);
    if (!(figures instanceof ProblemError)) await this.#guarded(() => this.#readBeside());
  }

  /** The figures of before stay where the new ones did not come. */
  #takeFigures(figures: Figures): void {
    if (!(figures instanceof ProblemError)) this.lineage = figures;
    this.problem = figures instanceof ProblemError ? figures.detail : '';
  }

  #renewPedigree(): void {
    const path = this.path;
    this.readPedigree = (generations) => api.get<PedigreeView>(`${path}/pedigree`, { query: { generations } });
  }

  /** Reads the animal of the page anew. An undo may come when its page was left and opened again: whatever is shown then is read. */
  readonly readAgain = (): Promise<void> => invalidate('record:individual');

  /** Reads what the pedigree says; the record stays usable when that fails. */
  async readFigures(): Promise<void> {
    await this.#guarded(async () => {
      this.#takeFigures(await api.get<Lineage>(`${this.path}/lineage`));
      await this.#readBeside();
    });
  }

  async #guarded(read: () => Promise<void>): Promise<void> {
    try {
      await read();
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      this.problem = error.detail;
    }
  }

  /** What is shown beside the figures: the loops that F arises through, and the figures of its young. */
  async #readBeside(): Promise<void> {
    await Promise.all([this.loops.read(this.path), this.#readYoung()]);
  }

  async #readYoung(): Promise<void> {
    const first = new Map(
      this.now.young.flatMap(({ clutch, animals }) => {
        const shown = animals.find((animal) => !animal.isPrivate);
        return shown ? [[shown.id, clutch.id]] : [];
      }),
    );
    // Figures are asked by POST, which is for members.
    if (first.size === 0 || !session.may('ask', 'lineage')) return;
    const answer = await api.ask<{ items: (YoungFigures & { id: string })[] }>('/lineage/figures', {
      individuals: [...first.keys()].slice(0, 200),
    });
    this.youngFigures = new Map(answer.items.map((item) => [first.get(item.id) ?? '', item]));
  }

  /** Writes the named fields and offers to undo that. Throws `ProblemError`. */
  async change(fields: Record<string, unknown>, version: number): Promise<void> {
    const answer = await api.patch<Individual>(this.path, fields, { version });
    const { name } = this;
    this.take(answer);
    const words = `${name} changed: ${Object.keys(fields).map(fieldInWords).join(', ')}.`;
    undoOffer.offer(words, answer, this.readAgain);
    await this.readAgain();
  }
}
