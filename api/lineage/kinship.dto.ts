import { ArrayMinSize } from 'class-validator';
import { mostInGrid } from '../../shared/most-in-grid.ts';
import { FlagField, TextListField } from '../platform/fields.ts';

/** Animals whose kinships are wanted. */
export class KinshipRequest {
  @TextListField({
    max: 40,
    maxItems: 500,
    description: 'Ids or registry numbers of 1 to 500 different animals; a withdrawn animal counts too.',
  })
  @ArrayMinSize(1, { message: 'must name at least one animal' })
  individuals: string[];

  @FlagField({
    optional: true,
    description: `Also tell what young of each two would be: F with its range and what it rests on; of at most ${mostInGrid} animals. Not if left out.`,
  })
  young = false;
}

/** Animals whose figures are wanted. */
export class FiguresRequest {
  @TextListField({
    max: 40,
    maxItems: 200,
    description: 'Ids or registry numbers of 1 to 200 different animals; a withdrawn animal counts too.',
  })
  @ArrayMinSize(1, { message: 'must name at least one animal' })
  individuals: string[];
}
