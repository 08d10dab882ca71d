import { IntegerField, TextField } from '../platform/fields.ts';

/** How much of the answer is wanted. */
export class InbreedingLoopsQuery {
  @IntegerField({
    min: 1,
    max: 200,
    optional: true,
    description:
      'Most loops to list, those with the largest parts of F; 20 if left out. The rest is told by common ancestor.',
  })
  most = 20;

  @IntegerField({
    min: 1,
    max: 200,
    optional: true,
    description:
      'Most common ancestors to name, those with the largest parts of F; 50 if left out. Those of listed loops are named besides, the rest is told as a sum.',
  })
  ancestors = 50;

  @TextField({
    max: 80,
    optional: true,
    description:
      'Lists only loops through this common ancestor: its id or registry number. Of a parent that nobody knows the id of its clutch; of founders that are ' +
      'kin by base kinship the id of their source, or of both sources with a comma between. Everything else is as without it.',
    example: '10704-4',
  })
  commonAncestor?: string;
}
