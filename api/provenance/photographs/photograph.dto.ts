import { ApiProperty, OmitType, PartialType } from '@nestjs/swagger';
import { photographViews, type PhotographView } from '../../../shared/vocabulary.ts';
import { ChoiceField, DateField, IdField, TextField } from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';

/** A new photograph, beside its picture. */
export class NewPhotographRequest {
  @IdField({ description: 'The animal that it shows.' })
  individualId: string;

  @ChoiceField(photographViews, { description: 'The side of the animal that it shows.' })
  view: PhotographView;

  @DateField({ optional: true, nullable: true, description: 'When it was taken.' })
  takenOn?: string | null;

  @TextField({ max: 10_000, optional: true, nullable: true, description: 'What else is known of it.' })
  notes?: string | null;
}

/** The form by which a photograph is sent. */
export class PhotographForm extends NewPhotographRequest {
  @ApiProperty({ type: 'string', format: 'binary', description: 'The picture: JPEG, PNG, WebP or AVIF.' })
  file: unknown;
}

/** Changes of what is said of a photograph; its picture and its animal stay. */
export class PhotographChangeRequest extends PartialType(OmitType(NewPhotographRequest, ['individualId']), {
  skipNullProperties: false,
}) {}

/** Which photographs to list. */
export class PhotographQuery extends PageQuery {
  @IdField({
    optional: true,
    description: 'Photographs of this animal.',
  })
  individualId?: string;

  @ChoiceField(photographViews, { optional: true, description: 'The side that they show.' })
  view?: PhotographView;
}

export const pictureSizes = ['small', 'whole'] as const;

/** How large a picture is wanted. */
export class PictureQuery {
  @ChoiceField(pictureSizes, {
    optional: true,
    description: 'small: longest edge at most 640 pixels; whole: at most 4096. whole if left out.',
  })
  size?: (typeof pictureSizes)[number];
}
