import { ChoiceField } from '../../platform/fields.ts';

export const occurrenceFormats = ['json', 'csv'] as const;
type OccurrenceFormat = (typeof occurrenceFormats)[number];

/** In which form to tell it. */
export class OccurrenceQuery {
  @ChoiceField(occurrenceFormats, {
    optional: true,
    description: 'json: JSON-LD, the usual one; csv: Simple Darwin Core, one row.',
  })
  format: OccurrenceFormat = 'json';
}
