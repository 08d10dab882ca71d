import { SvelteSet } from 'svelte/reactivity';
import { api } from '$lib/api/client.ts';
import { Intent } from '$lib/api/intent.ts';
import type { KeptPlan, KeptPlanPair } from '$lib/api/types.ts';
import { pairName } from '$lib/match/kept-plan-words.ts';
import { today } from '$lib/ui/dates.ts';
import { dateProblem } from '$lib/ui/typed-dates.ts';
import { counted } from '$lib/ui/figures.ts';
import { FormState } from '$lib/ui/form-state.svelte.ts';
import { undoOffer } from '$lib/ui/undo.svelte.ts';

type Leave = KeptPlanPair['now']['needs'][number];

/** Which pairs of a kept plan are chosen, and what is done with them. */
export class Deciding {
  /** Places of the chosen pairs. */
  readonly chosen = new SvelteSet<number>();
  /** What they are accepted in spite of. */
  readonly allowed = new SvelteSet<Leave>();
  readonly form = new FormState((pointer) => pointer === '/joined');
  joined = $state(today());
  /** Whether the animals leave where they live on that day. */
  moveOut = $state(false);
  readonly #intent = new Intent();
  readonly #plan: () => KeptPlan;
  readonly #readAgain: () => Promise<unknown>;

  constructor(plan: () => KeptPlan, readAgain: () => Promise<unknown>) {
    this.#plan = plan;
    this.#readAgain = readAgain;
  }

  /** The chosen pairs, as far as they can be accepted now. */
  pairs = $derived.by((): KeptPlanPair[] =>
    this.#plan().pairs.filter(({ place, now }) => this.chosen.has(place) && now.canBeAccepted),
  );

  /** What has to be asked for to accept them, each once. */
  needs = $derived.by((): Leave[] =>
    this.pairs.flatMap(({ now }) => now.needs).filter((leave, at, all) => all.indexOf(leave) === at),
  );

  /** Whether any animal of them lives elsewhere. */
  isElsewhere = $derived(this.pairs.some(({ now }) => now.livesIn.length > 0));

  choose(place: number, isChosen: boolean): void {
    if (isChosen) this.chosen.add(place);
    else this.chosen.delete(place);
  }

  allow(leave: Leave, isAllowed: boolean): void {
    if (isAllowed) this.allowed.add(leave);
    else this.allowed.delete(leave);
  }

  /** Turns the chosen pairs into pairings. */
  async accept(event: SubmitEvent): Promise<void> {
    event.preventDefault();
    const wrong = dateProblem(this.joined);
    if (wrong) return this.form.refuse({ '/joined': wrong });
    const moveOut = this.isElsewhere && this.moveOut;
    if (moveOut && this.joined.trim() === '')
      return this.form.refuse({ '/joined': 'Write from when: on that day they leave where they live.' });
    const { id, version, name } = this.#plan();
    const body = {
      pairs: this.pairs.map(({ place }) => ({ place })),
      joined: this.joined.trim() || null,
      moveOut,
      allow: this.needs.filter((leave) => this.allowed.has(leave)),
    };
    const accepted = await this.form.run(() =>
      this.#intent.post<KeptPlan>(`/kept-plans/${id}/pairings`, body, version),
    );
    if (!accepted) return;
    this.chosen.clear();
    this.allowed.clear();
    await this.#readAgain();
    undoOffer.offer(
      `${counted(body.pairs.length, ['pairing', 'pairings'])} made from ${name}.`,
      accepted,
      this.#readAgain,
    );
  }

  /** Declines a pair, or puts it back. */
  async decide(pair: KeptPlanPair, state: 'declined' | 'proposed'): Promise<void> {
    const { id, version } = this.#plan();
    const body = { pairs: [{ place: pair.place }], state };
    const decided = await this.form.run(() => api.patch<KeptPlan>(`/kept-plans/${id}/pairs`, body, { version }));
    if (!decided) return;
    this.chosen.delete(pair.place);
    await this.#readAgain();
    const words = state === 'declined' ? 'are declined' : 'are proposed again';
    undoOffer.offer(`${pairName(pair)} ${words}.`, decided, this.#readAgain);
  }
}
