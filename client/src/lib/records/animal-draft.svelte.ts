import type { Sex, SexBasis, Status, Visibility } from '$shared/vocabulary.ts';
import type { Individual } from '../api/types.ts';
import { dateProblem } from '../ui/typed-dates.ts';

const typedFields = [
  'code',
  'speciesId',
  'lineId',
  'sex',
  'sexBasis',
  'sexedOn',
  'origin',
  'sourceId',
  'clutchId',
  'hatched',
  'outOfWater',
  'status',
  'died',
  'notes',
  'visibility',
] as const;

/** What a form knows of one animal, as text. Empty means "not known". */
export class AnimalDraft {
  code = $state('');
  speciesId = $state('');
  lineId = $state('');
  sex = $state<Sex>('unsexed');
  sexBasis = $state<SexBasis | ''>('');
  sexedOn = $state('');
  /** Where it comes from: a source, a clutch, or nobody knows. */
  origin = $state<'unknown' | 'source' | 'clutch'>('unknown');
  sourceId = $state('');
  clutchId = $state('');
  hatched = $state('');
  outOfWater = $state('');
  status = $state<Status>('alive');
  died = $state('');
  notes = $state('');
  visibility = $state<Visibility>('club');

  /** Fields of this draft by the pointers of the service. */
  static readonly pointers: readonly string[] = [
    'code',
    'speciesId',
    'lineId',
    'sex',
    'sexBasis',
    'sexedOn',
    'sourceId',
    'clutchId',
    'hatched',
    'outOfWater',
    'status',
    'died',
    'notes',
    'visibility',
  ].map((name) => `/${name}`);

  /** Takes over what stands in the register. */
  read(animal: Individual): void {
    this.code = animal.code ?? '';
    this.speciesId = animal.speciesId;
    this.lineId = animal.lineId ?? '';
    this.sex = animal.sex;
    this.sexBasis = animal.sexBasis ?? '';
    this.sexedOn = animal.sexedOn ?? '';
    this.origin = animal.source ? 'source' : animal.clutch ? 'clutch' : 'unknown';
    this.sourceId = animal.source?.id ?? '';
    this.clutchId = animal.clutch?.id ?? '';
    this.hatched = animal.hatched ?? '';
    this.outOfWater = animal.outOfWater ?? '';
    this.status = animal.status;
    this.died = animal.died ?? '';
    this.notes = animal.notes ?? '';
    this.visibility = animal.visibility;
  }

  /** What is typed so far, to be put back when the reader comes back to the form. */
  capture(): Record<string, string> {
    return Object.fromEntries(typedFields.map((name) => [name, this[name]]));
  }

  /** Puts back what was captured. */
  restore(typed: Record<string, string>): void {
    Object.assign(this, typed);
  }

  /** The next animal of the same evening: species, line and origin stay, the rest is blank. */
  next(): void {
    this.code = '';
    this.sex = 'unsexed';
    this.sexBasis = '';
    this.sexedOn = '';
    this.status = 'alive';
    this.died = '';
    this.notes = '';
  }

  /** What can be seen to be wrong before asking the service, by pointer. */
  problems(): Record<string, string> {
    const found: Record<string, string | undefined> = {
      '/speciesId': this.speciesId === '' ? 'Choose the species; a new one can be written down here.' : undefined,
      '/sourceId':
        this.origin === 'source' && this.sourceId === ''
          ? 'Choose the source, or say that the origin is unknown.'
          : undefined,
      '/clutchId':
        this.origin === 'clutch' && this.clutchId === ''
          ? 'Choose the clutch, or say that the origin is unknown.'
          : undefined,
      '/sexedOn': this.sex === 'unsexed' ? undefined : dateProblem(this.sexedOn),
      '/hatched': dateProblem(this.hatched),
      '/outOfWater': dateProblem(this.outOfWater),
      '/died': this.status === 'died' ? dateProblem(this.died) : undefined,
    };
    return Object.fromEntries(
      Object.entries(found).filter((entry): entry is [string, string] => entry[1] !== undefined),
    );
  }

  /** The body of POST and PATCH: null says "not known". */
  body(): Record<string, string | null> {
    const isSexed = this.sex !== 'unsexed';
    return {
      code: said(this.code),
      speciesId: this.speciesId,
      lineId: said(this.lineId),
      sex: this.sex,
      sexBasis: isSexed ? said(this.sexBasis) : null,
      sexedOn: isSexed ? said(this.sexedOn) : null,
      sourceId: this.origin === 'source' ? this.sourceId : null,
      clutchId: this.origin === 'clutch' ? this.clutchId : null,
      hatched: said(this.hatched),
      outOfWater: said(this.outOfWater),
      status: this.status,
      died: this.status === 'died' ? said(this.died) : null,
      notes: said(this.notes),
      visibility: this.visibility,
    };
  }
}

const said = (text: string): string | null => (text.trim() === '' ? null : text.trim());
