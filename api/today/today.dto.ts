import { ChoiceField, IntegerField, PatternField } from '../platform/fields.ts';
import { say } from '../platform/say.ts';

/** Whose animals and clutches are looked at. */
export const holdings = ['mine', 'club'] as const;
export type Holding = (typeof holdings)[number];

/** Of which day, of whom, and how much of it. */
export class TodayQuery {
  @PatternField({
    pattern: /^(1[7-9]|2[01])\d{2}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/,
    words: say`must be a day such as 2026-11-26, from 1700 to 2199`,
    optional: true,
    description: 'The day by the calendar where the tanks stand, YYYY-MM-DD; today in UTC if left out.',
    example: '2026-11-26',
  })
  on?: string;

  @ChoiceField(holdings, {
    optional: true,
    description:
      'mine: what whoever asks keeps, if left out; club: what all keepers keep, as far as it may be seen. Offers and reviews are those of whoever asks.',
  })
  of: Holding = 'mine';

  @IntegerField({
    min: 1,
    max: 200,
    optional: true,
    description: 'How many of each kind at most; 30 if left out. Each says how many there are in all.',
  })
  limit = 30;
}
