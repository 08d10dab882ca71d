import { Shown } from '../platform/fields.ts';

/** How far the stored figures have come. */
export class FiguresProgressView {
  @Shown({
    description:
      'Whether every stored figure, by which lists are sorted and filtered, follows the newest change. The lineage of one animal says it for itself.',
  })
  current: boolean;

  @Shown({
    description: 'Records whose figures the recomputation under way has written; 0 where none is under way.',
    type: 'integer',
    minimum: 0,
  })
  done: number;

  @Shown({ description: 'Records that it has to write; 0 where none is under way.', type: 'integer', minimum: 0 })
  total: number;
}
