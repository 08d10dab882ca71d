import type { LossCause } from '$shared/vocabulary.ts';
import type { ClutchItem } from '../api/types.ts';
import { today } from '../ui/dates.ts';
import { dateProblem } from '../ui/typed-dates.ts';
import { tadpolesLeft } from './today-words.ts';

/** A count at the tank: how many hatched, or left the water, on which day, and how many were lost. */
export class CountDraft {
  /** What is counted on: as it was read, and after a count of this form as that was written. */
  clutch = $state.raw<ClutchItem>() as ClutchItem;
  /** How many hatched; of tadpoles how many leave the water now. */
  count = $state('');
  lost = $state('');
  cause = $state<LossCause>('unknown');
  when = $state<'today' | 'yesterday' | 'earlier'>('today');
  earlier = $state('');
  /** Whether froglets get their registry numbers at once, or are only counted. */
  how = $state<'numbers' | 'count'>('numbers');

  constructor(clutch: ClutchItem) {
    this.clutch = clutch;
    const most = this.most;
    this.count = most === null ? '' : String(most);
  }

  day = $derived(this.when === 'earlier' ? this.earlier.trim() : today(this.when === 'today' ? 0 : 1));

  get isEgg(): boolean {
    return this.clutch.stage === 'egg';
  }

  /** As many as there can be; null where nobody counted before. */
  get most(): number | null {
    const { clutch } = this;
    if (!this.isEgg) return tadpolesLeft(clutch);
    const lost = clutch.losses.reduce((sum, { count }) => sum + count, 0);
    return clutch.eggs === null ? null : Math.max(0, Math.min(clutch.eggs - lost, clutch.fertile ?? Infinity));
  }

  /** One more or one fewer. */
  step(by: 1 | -1): void {
    const now = /^\d{1,5}$/.test(this.count.trim()) ? Number(this.count) : 0;
    this.count = String(Math.max(0, now + by));
  }

  problems(): Record<string, string> {
    const found: Record<string, string> = {};
    const isNumber = (text: string): boolean => /^\d{1,4}$/.test(text.trim());
    const { most } = this;
    if (!isNumber(this.count)) found['/count'] = 'Write how many, in digits; 0 where there is none.';
    else if (most !== null && Number(this.count) > most)
      found['/count'] = this.isEgg
        ? `No more than ${most} eggs are left. Correct the clutch where there were more.`
        : `No more than ${most} tadpoles are left. Correct the clutch where there were more.`;
    else if (!this.isEgg && this.how === 'numbers' && Number(this.count) > 200)
      found['/count'] = 'At most 200 get their numbers in one go.';
    if (this.lost.trim() !== '' && !isNumber(this.lost)) found['/lost'] = 'Write how many, in digits.';
    const wrongDay = dateProblem(this.day);
    if (wrongDay) found['/day'] = wrongDay;
    return found;
  }

  /** What is written of the clutch: its counts and losses; null where nothing of it changes. */
  change(): Record<string, unknown> | null {
    const count = Number(this.count);
    const lost = this.#losses();
    if (this.isEgg)
      return { hatched: count, ...(count > 0 && this.day !== '' ? { hatchedOn: this.day } : {}), ...lost };
    // froglets with numbers are counted by the register
    if (this.how === 'numbers') return 'losses' in lost ? lost : null;
    return { ...(count > 0 ? { outOfWater: (this.clutch.outOfWater ?? 0) + count } : {}), ...lost };
  }

  /** Froglets that get their numbers; null where they are only counted, or where there are none. */
  young(): Record<string, unknown> | null {
    const count = Number(this.count);
    if (this.isEgg || this.how === 'count' || count === 0) return null;
    const dates = {
      ...(this.clutch.hatchedOn === null ? {} : { hatched: this.clutch.hatchedOn }),
      ...(this.day === '' ? {} : { outOfWater: this.day }),
    };
    return { animals: Array.from({ length: count }, () => dates) };
  }

  #losses(): { losses?: { cause: LossCause; count: number }[] } {
    const lost = Number(this.lost);
    if (!(lost > 0)) return {};
    const before = this.clutch.losses.find(({ cause }) => cause === this.cause)?.count ?? 0;
    const others = this.clutch.losses.filter(({ cause }) => cause !== this.cause);
    return { losses: [...others, { cause: this.cause, count: before + lost }] };
  }
}
