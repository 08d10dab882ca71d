// Maps and sets here are replaced whole, never changed in place.
/* eslint-disable svelte/prefer-svelte-reactivity */
import { SvelteMap } from 'svelte/reactivity';
import { mostInGrid } from '$shared/most-in-grid.ts';
import { nameOf } from '$lib/charts/ancestors/ancestor-table.ts';
import { api } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type {
  Figures,
  Forecast,
  Individual,
  IndividualItem,
  Kinship,
  Line,
  Page,
  YoungInbreeding,
} from '$lib/api/types.ts';
import type { ReadPedigree } from '$lib/charts/ancestors/ancestor-view.svelte.ts';
import { commonAncestors } from '$lib/charts/ancestors/loops.ts';
import { readPedigree } from '$lib/charts/ancestors/pedigree-graph.ts';
import type { PedigreeView } from '$lib/charts/ancestors/pedigree-view.ts';
import { proposedYoung } from '$lib/charts/ancestors/proposed-young.ts';
import { startingLimit } from '$lib/match/starting-limit.ts';
import { today } from '$lib/ui/dates.ts';
import { counted } from '$lib/ui/figures.ts';
import { buildGrid, isBlind, type Side } from './kinship-table.ts';

/** What one ancestor of both adds to the F of their young. */
export interface Through {
  name: string;
  part: number;
}

/** Animals of a line that are taken on one side. */
const sideMost = 12;

/** The chosen animals, how related they are, and the pair that is looked at. */
export class MatchState {
  animals = $state.raw<IndividualItem[]>([]);
  started = $state(false);
  problem = $state('');
  /** Young more inbred than this are marked, 0 to 1. The keeper decides. */
  limit = $state(startingLimit);
  /** What was left out of a line that was too long. */
  notice = $state('');
  forecast = $state.raw<Forecast | null>(null);
  through = $state.raw<Through[]>([]);
  readonly put = new SvelteMap<string, Side>();
  #young = $state.raw<Map<string, Map<string, YoungInbreeding | null>>>(new Map());
  #figures = $state.raw<Map<string, Figures>>(new Map());
  #chosen = $state<{ row: string; column: string } | null>(null);
  #asked = '';
  #readings = 0;

  readonly ids = $derived(this.animals.map((animal) => animal.id));
  readonly grid = $derived(
    buildGrid(
      this.animals.filter((animal) => this.#young.has(animal.id)),
      this.put,
      (one, other) => this.#young.get(one)?.get(other) ?? null,
      this.#figures,
    ),
  );
  readonly chosen = $derived(
    this.grid.cells
      .flat()
      .find((cell) => cell.row.id === this.#chosen?.row && cell.column.id === this.#chosen.column) ?? null,
  );
  readonly chosenName = $derived(
    this.chosen ? [this.chosen.row, this.chosen.column].map((one) => one.code ?? one.number).join(' × ') : '',
  );

  /** How far up the records of the two reach, in words: no F stands without it. */
  readonly depthWords = $derived.by(() => {
    const pair = this.chosen;
    if (!pair) return '';
    const [row, column] = [pair.row, pair.column].map((one) => {
      const depth = this.#figures.get(one.id)?.depth ?? 0;
      const name = one.code ?? one.number;
      return depth === 0 ? `${name} is a founder` : `${counted(depth, ['generation', 'generations'])} above ${name}`;
    });
    return `Recorded: ${row}, ${column}.`;
  });

  /** The pedigree of the young in question, for the chart. */
  readonly readProposed: ReadPedigree = $derived.by(() => {
    const pair = this.chosen;
    const standings = this.forecast?.label.shares ?? [];
    return async (generations) => {
      if (!pair) throw new ProblemError(0, { detail: 'No pair is chosen.' });
      return readBoth(pair.row.id, pair.column.id, generations, standings);
    };
  });

  /** Takes the animals of the address; those that are there already stay. */
  async start(ids: string[]): Promise<void> {
    if (ids.join() === this.ids.join() && this.started) return;
    await this.#guarded(async () => {
      this.animals = await Promise.all(
        ids.slice(0, mostInGrid).map((id) => api.get<Individual>(`/individuals/${encodeURIComponent(id)}`)),
      );
      await this.#readFigures();
    });
    this.started = true;
  }

  async add(animal: IndividualItem): Promise<void> {
    if (this.ids.includes(animal.id)) return;
    if (this.animals.length >= mostInGrid) {
      this.problem = `A grid holds ${mostInGrid} animals at most; take one out first.`;
      return;
    }
    this.animals = [...this.animals, animal];
    await this.#guarded(() => this.#readFigures());
  }

  remove(id: string): void {
    this.animals = this.animals.filter((animal) => animal.id !== id);
    this.put.delete(id);
  }

  /** Puts an unsexed animal on the other side. */
  turn(id: string): void {
    const side = [...this.grid.rows, ...this.grid.columns].find((one) => one.animal.id === id)?.side;
    this.put.set(id, side === 'row' ? 'column' : 'row');
  }

  async choose(row: string, column: string): Promise<void> {
    this.#chosen = { row, column };
    this.forecast = null;
    this.through = [];
    const asked = (this.#asked = `${row} ${column}`);
    await this.#guarded(async () => {
      const [forecast, pedigree] = await Promise.all([
        api.ask<Forecast>('/lineage/forecast', { sires: [row], dams: [column] }),
        readBoth(row, column, 8, []),
      ]);
      if (asked !== this.#asked) return;
      this.forecast = forecast;
      this.through = throughWhom(pedigree);
    });
  }

  async #readFigures(): Promise<void> {
    const individuals = this.ids;
    const reading = ++this.#readings;
    if (individuals.length === 0) return;
    const [kinship, figures] = await Promise.all([
      api.ask<Kinship>('/lineage/kinship', { individuals, young: true }),
      api.ask<{ items: Figures[] }>('/lineage/figures', { individuals }),
    ]);
    // an answer that comes late does not know the animal added last
    if (reading !== this.#readings) return;
    this.#young = new Map(
      kinship.individuals.map((one, i) => [
        one.id,
        new Map(kinship.individuals.map((other, j) => [other.id, kinship.young?.[i]?.[j] ?? null])),
      ]),
    );
    this.#figures = new Map(figures.items.map((item) => [item.id, item]));
    if (!this.chosen) this.#chooseLeastRelated();
  }

  /** Looks at the best pair at once, so that its label and marks are seen with the grid. */
  #chooseLeastRelated(): void {
    const known = this.grid.cells.flat().filter((cell) => cell.expected !== null && !isBlind(cell));
    const [least] = known.sort((a, b) => (a.expected ?? 0) - (b.expected ?? 0));
    if (least) void this.choose(least.row.id, least.column.id);
  }

  /**
   * What could fill the empty side: the living animals of the other sex of a chosen one's line. Null where both sides have
   * somebody, or nobody has a line.
   */
  readonly offer = $derived.by(() => {
    const { rows, columns } = this.grid;
    const [one] = [...rows, ...columns];
    if (!one?.animal.line || (rows.length > 0 && columns.length > 0)) return null;
    const { line, lineId } = one.animal;
    return rows.length > 0
      ? ({ sex: 'female', lineId: lineId ?? '', words: `living females of ${line}` } as const)
      : ({ sex: 'male', lineId: lineId ?? '', words: `living males of ${line}` } as const);
  });

  /** Takes up the offer: the youngest first, as many as a grid shows at a glance. */
  async takeOffer(): Promise<void> {
    const offer = this.offer;
    if (!offer) return;
    await this.#guarded(async () => {
      const { items, total } = await youngestOf(offer.lineId, offer.sex);
      const others = items.filter((item) => !this.ids.includes(item.id));
      if (others.length === 0) throw new ProblemError(0, { detail: `There are no ${offer.words} in the register.` });
      this.animals = [...this.animals, ...others];
      this.notice =
        total > items.length
          ? `Of ${total} ${offer.words} the ${items.length} that hatched last were taken; left out: ${total - items.length}.`
          : '';
      await this.#readFigures();
    });
  }

  /** Puts the living of a line in place of what was chosen: of each sex the youngest, as many as a grid shows at a glance. */
  async takeLine({ id, name }: Pick<Line, 'id' | 'name'>): Promise<void> {
    await this.#guarded(async () => {
      const sides = await Promise.all([youngestOf(id, 'male'), youngestOf(id, 'female')]);
      const taken = sides.flatMap(({ items }) => items);
      const total = sides.reduce((sum, side) => sum + side.total, 0);
      if (taken.length === 0) throw new ProblemError(0, { detail: `No living animal of ${name} has a known sex.` });
      this.animals = taken;
      this.notice =
        total > taken.length
          ? `Of ${counted(total, ['living animal', 'living animals'])} of ${name} whose sex is known the ${taken.length} that hatched last were taken; left out: ${total - taken.length}.`
          : '';
      await this.#readFigures();
    });
  }

  async #guarded(work: () => Promise<void>): Promise<void> {
    try {
      await work();
      this.problem = '';
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      this.problem = error.detail;
    }
  }
}

/** The youngest living animals of one sex of a line, and how many there are. */
async function youngestOf(line: string, sex: 'male' | 'female'): Promise<{ items: IndividualItem[]; total: number }> {
  const query = { line, sex, status: 'alive', sort: 'hatched', order: 'desc', limit: sideMost, total: true };
  const { items, total } = await api.get<Page<IndividualItem>>('/individuals', { query });
  return { items, total: total ?? items.length };
}

async function readBoth(
  row: string,
  column: string,
  generations: number,
  standings: Forecast['label']['shares'],
): Promise<PedigreeView> {
  const query = { generations };
  const [one, other] = await Promise.all(
    [row, column].map((id) => api.get<PedigreeView>(`/individuals/${id}/pedigree`, { query })),
  );
  if (!one || !other) throw new ProblemError(0, { detail: 'No pair is chosen.' });
  return proposedYoung(one, other, today(), standings);
}

function throughWhom(pedigree: PedigreeView): Through[] {
  const graph = readPedigree(pedigree);
  return commonAncestors(graph)
    .flatMap(({ id, part }) => {
      const animal = graph.individuals.get(id);
      return animal && part > 0 ? [{ name: nameOf(animal), part }] : [];
    })
    .sort((a, b) => b.part - a.part);
}
