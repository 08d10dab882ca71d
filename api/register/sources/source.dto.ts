import { PartialType } from '@nestjs/swagger';
import { sourceKinds, type SourceKind, type Visibility } from '../../../shared/vocabulary.ts';
import {
  ChoiceField,
  DateField,
  IdField,
  NumberField,
  PatternField,
  TextField,
  TextListField,
  VisibilityField,
} from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';
import { say } from '../../platform/say.ts';

/** A new source. */
export class NewSourceRequest {
  @TextField({
    max: 40,
    optional: true,
    nullable: true,
    description: "The keeper's own code, unique for the keeper; case does not matter.",
    example: 'S-1',
  })
  code?: string | null;

  @ChoiceField(sourceKinds, { optional: true, description: 'Kind of source; unknown if left out.' })
  kind?: SourceKind;

  @DateField({ optional: true, nullable: true, description: 'When its animals came.' })
  date?: string | null;

  @TextField({ max: 200, optional: true, nullable: true, description: 'From whom.' })
  receivedFrom?: string | null;

  @TextField({ max: 200, optional: true, nullable: true, description: 'By whom.' })
  receivedBy?: string | null;

  @PatternField({
    pattern: /^[A-Z]{2}$/,
    words: say`must be an ISO 3166-1 code of two capital letters, such as EC`,
    optional: true,
    nullable: true,
    description: 'Country of export, ISO 3166-1 code of two letters.',
    example: 'EC',
  })
  countryOfExport?: string | null;

  @TextListField({ max: 100, maxItems: 50, optional: true, description: 'References of permits.' })
  permitReferences?: string[];

  @TextField({ max: 120, optional: true, nullable: true, description: 'Label that its animals came under.' })
  labelAsReceived?: string | null;

  @TextField({ max: 2000, optional: true, nullable: true, description: 'What is said about the label.' })
  labelNote?: string | null;

  @NumberField({
    min: 0,
    max: 1,
    optional: true,
    description: 'Kinship assumed between any two animals that came together, 0 to 1; 0 if left out.',
  })
  baseKinship?: number;

  @TextField({ max: 10_000, optional: true, nullable: true, description: 'Notes.' })
  notes?: string | null;

  @VisibilityField('Who may see it; club if left out.')
  visibility?: Visibility;
}

/** Changes of a source. */
export class SourceChangeRequest extends PartialType(NewSourceRequest, { skipNullProperties: false }) {}

/** Which sources to list. */
export class SourceQuery extends PageQuery {
  @ChoiceField(sourceKinds, { optional: true, description: 'Kind of source.' })
  kind?: SourceKind;

  @IdField({ optional: true, description: 'Sources that this keeper entered.' })
  keeperId?: string;

  @VisibilityField('Visibility.')
  visibility?: Visibility;

  @TextField({ max: 100, optional: true, description: 'Part of the code, of the label or of a name.' })
  q?: string;
}
