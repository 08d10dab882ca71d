import { PartialType } from '@nestjs/swagger';
import { citesAppendices, traitNames, type CitesAppendix, type Trait } from '../../../shared/vocabulary.ts';
import { ChoiceField, ListField, NumberField, TextField, TextListField } from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';
import { say } from '../../platform/say.ts';

const bound = (description: string): PropertyDecorator =>
  NumberField({ min: 0, max: 100_000, optional: true, nullable: true, description });

/** One life-history range; its unit follows from the trait. */
export class SpeciesRangeRequest {
  @ChoiceField(traitNames, { description: 'What is measured; each trait once.' })
  trait: Trait;

  @bound('Least usual value.')
  usualLeast?: number | null;

  @bound('Greatest usual value.')
  usualMost?: number | null;

  @bound('Least value ever known.')
  extremeLeast?: number | null;

  @bound('Greatest value ever known.')
  extremeMost?: number | null;

  @TextField({ max: 500, description: 'The publication that says so, or "common practice".' })
  source: string;
}

/** A new species profile. */
export class NewSpeciesRequest {
  @TextField({
    min: 3,
    max: 120,
    description: 'Scientific name, unique in the register.',
    example: 'Epipedobates anthonyi',
  })
  scientificName: string;

  @TextField({ max: 120, optional: true, nullable: true, description: 'Common name.' })
  commonName?: string | null;

  @ChoiceField(citesAppendices, { optional: true, nullable: true, description: 'CITES appendix that lists it.' })
  citesAppendix?: CitesAppendix | null;

  @TextListField({
    max: 2,
    maxItems: 60,
    pattern: /^[A-Z]{2}$/,
    patternWords: say`must hold ISO 3166-1 codes of two capital letters, such as EC`,
    optional: true,
    description: 'Countries it lives in, ISO 3166-1 codes of two letters.',
  })
  nativeRange?: string[];

  @ListField(() => SpeciesRangeRequest, { max: traitNames.length, optional: true, description: 'Life-history ranges.' })
  ranges?: SpeciesRangeRequest[];
}

/** Changes of a species profile; `ranges` replaces all ranges. */
export class SpeciesChangeRequest extends PartialType(NewSpeciesRequest, { skipNullProperties: false }) {}

/** Which species to list. */
export class SpeciesQuery extends PageQuery {
  @TextField({ max: 120, optional: true, description: 'Part of the scientific or common name.' })
  q?: string;
}
