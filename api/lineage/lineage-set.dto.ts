import { OmitType } from '@nestjs/swagger';
import { ArrayMinSize } from 'class-validator';
import { TextListField } from '../platform/fields.ts';
import { IndividualQuery } from '../register/individuals/individual.dto.ts';

/** Most animals that can be picked by hand. */
const PICKED_MOST = 5000;

/** Which animals make the set: the filters of the list of animals, without its order and pages. */
export class LineageSetQuery extends OmitType(IndividualQuery, ['limit', 'after', 'total', 'sort', 'order']) {}

/** Animals picked by hand. */
export class LineageSetRequest {
  @TextListField({
    max: 40,
    maxItems: PICKED_MOST,
    description: `Ids or registry numbers of 1 to ${PICKED_MOST} different animals; a withdrawn animal counts too.`,
  })
  @ArrayMinSize(1, { message: 'must name at least one animal' })
  individuals: string[];
}
