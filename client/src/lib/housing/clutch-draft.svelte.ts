import type { Pairing, Ref } from '../api/types.ts';
import { today } from '../ui/dates.ts';
import { dateProblem } from '../ui/typed-dates.ts';
import { housedOn } from './housed.ts';
import { ParentsDraft, type Side } from './parents-draft.svelte.ts';
import { word } from '../words/word.ts';

export const sites = ['leaf', 'cup', 'glass', 'other'] as const;
export const siteWords: Record<(typeof sites)[number], string> = {
  leaf: word('leaf'),
  cup: word('cup'),
  glass: word('glass'),
  other: word('other'),
};
type Site = (typeof sites)[number] | '';

/** A clutch half noted, as plain values. */
export interface CapturedClutch {
  typed: Pick<ClutchDraft, 'when' | 'earlier' | 'eggs' | 'site' | 'otherSite' | 'code' | 'notes' | 'seen'>;
  parents: Pick<ParentsDraft, 'mode' | 'sires' | 'dams' | 'pairs'>;
  pairingId: string;
}

/** A clutch while it is noted: where, when, how many eggs, of whom. */
export class ClutchDraft {
  pairing = $state.raw<Pairing | null>(null);
  when = $state<'today' | 'yesterday' | 'earlier'>('today');
  earlier = $state('');
  eggs = $state('');
  site = $state<Site>('');
  otherSite = $state('');
  code = $state('');
  notes = $state('');
  readonly parents = new ParentsDraft();
  /** The animal seen as parent on a side, or '' for "not seen": all that are housed there, with equal odds. */
  seen = $state<Record<Side, string>>({ sires: '', dams: '' });

  laid = $derived(this.when === 'earlier' ? this.earlier.trim() : today(this.when === 'today' ? 0 : 1));
  housed = $derived(this.pairing ? housedOn(this.pairing.members, this.laid) : []);
  siteWords = $derived(this.site === 'other' ? this.otherSite.trim() : this.site);

  static readonly pointers = /^\/(pairingId|laid|eggs|site|code|notes|sires|dams|pairs)(\/.*)?$/;

  /** Candidates on a side as the group has them. */
  sideOf(side: Side): Ref[] {
    return this.housed.filter((animal) => animal.sex === (side === 'sires' ? 'male' : 'female'));
  }

  /** The group or the day changed: the candidates are whoever was housed there then. */
  presetParents(): void {
    this.seen = { sires: '', dams: '' };
    this.parents.preset(this.housed);
  }

  /** The keeper saw which animal it was, or did not. */
  choose(side: Side): void {
    const all = this.sideOf(side);
    const one = all.find((animal) => animal.id === this.seen[side]);
    this.parents.settle(side, one ? [one] : all);
  }

  /** What is typed so far, to be put back when the reader comes back to the form. */
  capture(): CapturedClutch {
    const { when, earlier, eggs, site, otherSite, code, notes } = this;
    const parents = $state.snapshot({
      mode: this.parents.mode,
      sires: this.parents.sires,
      dams: this.parents.dams,
      pairs: this.parents.pairs,
    });
    const seen = $state.snapshot(this.seen);
    return {
      typed: { when, earlier, eggs, site, otherSite, code, notes, seen },
      parents,
      pairingId: this.pairing?.id ?? '',
    };
  }

  /** Puts back what was typed; the group is read and set before, since it presets the parents. */
  restore(captured: CapturedClutch): void {
    Object.assign(this, captured.typed);
    Object.assign(this.parents, captured.parents);
  }

  problems(): Record<string, string> {
    const found = this.parents.problems();
    const wrongDate = dateProblem(this.laid);
    if (wrongDate) found['/laid'] = wrongDate;
    if (this.eggs.trim() !== '' && !/^\d{1,5}$/.test(this.eggs.trim()))
      found['/eggs'] = 'Write how many eggs, in digits; leave it empty if nobody counted.';
    return found;
  }

  body(): Record<string, unknown> {
    return {
      pairingId: this.pairing?.id ?? null,
      laid: this.laid || null,
      eggs: this.eggs.trim() === '' ? null : Number(this.eggs),
      site: this.siteWords || null,
      code: this.code.trim() || null,
      notes: this.notes.trim() || null,
      ...this.parents.body(),
    };
  }
}
