import { IdField, IntegerField } from '../../platform/fields.ts';
import { PageQuery } from '../../platform/paging.ts';

/** Which lines and sources are asked about, and how few are few. */
export class AtRiskQuery extends PageQuery {
  @IdField({
    optional: true,
    description:
      'Only this line, and the sources and founders of its animals as far as they live on in it; the whole club if left out.',
  })
  lineId?: string;

  @IntegerField({
    min: 1,
    max: 5,
    optional: true,
    description: 'How many living animals that may breed are few: 1 if left out.',
  })
  mostCarriers = 1;
}
