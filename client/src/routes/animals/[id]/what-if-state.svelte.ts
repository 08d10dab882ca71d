import { api } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type { AssumableClutch, ClutchParents, WhatIf } from '$lib/api/types.ts';
import { ParentsDraft } from '$lib/housing/parents-draft.svelte.ts';
import { FormState } from '$lib/ui/form-state.svelte.ts';

/** A source of which another base kinship may be assumed. */
export class SourceAssumption {
  readonly id: string;
  readonly title: string;
  /** As recorded, 0 to 1; null where it may not be seen, so that nothing can be assumed either. */
  readonly recorded: number | null;
  text = $state('');
  error = $state<string | undefined>();

  constructor({ id, title, baseKinship }: WhatIf['sources'][number]) {
    this.id = id;
    this.title = title;
    this.recorded = baseKinship;
    this.text = baseKinship === null ? '' : String(baseKinship);
  }

  get value(): number | null {
    const value = Number(this.text.trim().replace(',', '.'));
    return this.text.trim() !== '' && value >= 0 && value <= 1 ? value : null;
  }

  get isOther(): boolean {
    return this.recorded !== null && this.value !== this.recorded;
  }
}

/** A clutch of which other parents may be assumed. */
export class ClutchAssumption {
  readonly clutch: AssumableClutch;
  /** The assumed parents; null while they are those recorded. */
  draft = $state.raw<ParentsDraft | null>(null);
  form = new FormState();

  constructor(clutch: AssumableClutch) {
    this.clutch = clutch;
  }

  /** Whether it can be named: a private clutch cannot, nor can pairs with a private animal. */
  get isOpen(): boolean {
    const { isPrivate, pairs, sires, dams } = this.clutch;
    const isSeen = (animal: { isPrivate: boolean } | null): boolean => !animal?.isPrivate;
    if (isPrivate) return false;
    if (pairs) return pairs.every(({ a, b }) => isSeen(a) && isSeen(b));
    return [sires, dams].some((side) => (side ?? []).every(({ animal }) => isSeen(animal)));
  }

  begin(): void {
    const draft = new ParentsDraft();
    draft.read(asParents(this.clutch));
    this.draft = draft;
  }

  leave(): void {
    this.draft = null;
    this.form.clear();
  }
}

/** Figures of one animal under assumptions: what is assumed, and what would follow. Nothing of it is written down. */
export class WhatIfState {
  /** What would follow; null until something was worked out. */
  answer = $state.raw<WhatIf | null>(null);
  sources = $state.raw<SourceAssumption[]>([]);
  clutches = $state.raw<ClutchAssumption[]>([]);
  otherClutches = $state(0);
  isRead = $state(false);
  readonly form = new FormState((pointer) => /^\/(sources|clutches)\//.test(pointer));

  /** Reads what can be assumed of an animal, and forgets what was assumed before. */
  async read(path: string): Promise<void> {
    this.answer = null;
    const answer = await this.form.run(() => api.ask<WhatIf>(`${path}/lineage/what-if`, {}));
    if (!answer) return;
    this.sources = answer.sources.map((source) => new SourceAssumption(source));
    this.clutches = answer.clutches.map((clutch) => new ClutchAssumption(clutch));
    this.otherClutches = answer.otherClutches;
    this.isRead = true;
  }

  /** Works out what follows from what is assumed now. */
  async work(path: string): Promise<void> {
    if (!(await this.#isSound())) return;
    const sources = this.sources.filter((source) => source.isOther);
    const clutches = this.clutches.filter(({ draft }) => draft !== null);
    for (const { form } of clutches) form.clear();
    if (sources.length + clutches.length === 0) {
      this.form.summary = 'Assume something first: another base kinship, or other parents of a clutch.';
      return;
    }
    const body = {
      sources: sources.map(({ id, value }) => ({ id, baseKinship: value })),
      clutches: clutches.map(({ clutch, draft }) => ({ id: clutch.id, ...draft?.body() })),
    };
    const answer = await this.form.run(async () => {
      try {
        return await api.ask<WhatIf>(`${path}/lineage/what-if`, body);
      } catch (error) {
        if (error instanceof ProblemError) place(error, sources, clutches);
        throw error;
      }
    });
    this.answer = answer ?? null;
  }

  /** Marks what cannot be asked. */
  async #isSound(): Promise<boolean> {
    let isSound = true;
    for (const source of this.sources) {
      source.error =
        source.recorded === null || source.value !== null ? undefined : 'Write a kinship from 0 to 1, such as 0.125.';
      if (source.error !== undefined) isSound = false;
    }
    for (const { draft, form } of this.clutches) {
      form.clear();
      const problems = draft?.problems() ?? {};
      if (Object.keys(problems).length === 0) continue;
      form.errors = problems;
      isSound = false;
    }
    if (!isSound) {
      this.form.clear();
      this.form.summary = 'See the marked places.';
      await this.form.focusFirst();
    }
    return isSound;
  }
}

/** Puts the places of a refusal on the source or the clutch that they speak of. */
function place(
  problem: ProblemError,
  sources: readonly SourceAssumption[],
  clutches: readonly ClutchAssumption[],
): void {
  for (const { pointer = '', detail } of problem.errors) {
    const [, list, at = '', rest = ''] = /^\/(sources|clutches)\/(\d+)(.*)$/.exec(pointer) ?? [];
    const source = list === 'sources' ? sources[Number(at)] : undefined;
    if (source) source.error = detail;
    const clutch = list === 'clutches' ? clutches[Number(at)] : undefined;
    if (clutch) clutch.form.errors = { ...clutch.form.errors, [rest]: detail };
  }
}

function asParents({ sires, dams, pairs }: AssumableClutch): ClutchParents {
  const side = (candidates: AssumableClutch['sires']) =>
    asOdds(candidates ?? []).map(({ animal, probability }) => ({ individual: animal, probability, reason: null }));
  const both = asOdds(pairs ?? []).flatMap(({ a, b, probability }) =>
    a && b ? [{ a, b, probability, reason: null }] : [],
  );
  return { mode: pairs ? 'pairs' : 'lists', sires: side(sires), dams: side(dams), pairs: both } as ClutchParents;
}

/** Probabilities as the odds that a keeper would write, 1 to 3 and not 0.25 to 0.75, where they are such. */
function asOdds<Row extends { probability: number }>(rows: readonly Row[]): Row[] {
  const least = Math.min(...rows.map(({ probability }) => probability));
  const odds = rows.map(({ probability }) => probability / least);
  const areWhole = odds.every((one) => one <= 1000 && Math.abs(one - Math.round(one)) < 1e-9);
  return rows.map((row, at) => (areWhole ? { ...row, probability: Math.round(odds[at] ?? 1) } : row));
}
