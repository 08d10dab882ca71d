import { ChoiceField } from '../../platform/fields.ts';

/** In which size a photograph of a sheet is wanted. */
export class PublicPictureQuery {
  @ChoiceField(['whole', 'small'], { optional: true, description: 'small: at most 480 pixels; whole if left out.' })
  size?: 'whole' | 'small';
}
