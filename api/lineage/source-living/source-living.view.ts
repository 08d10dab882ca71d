import { Shown } from '../../platform/fields.ts';
import { AsOfView } from '../lineage.view.ts';

/** What is alive of a source. */
export class SourceLivingView {
  @Shown({ description: 'Living animals that came from the source themselves.', type: 'integer', minimum: 0 })
  founders: number;

  @Shown({
    description: 'Living animals that descend from it, or may, by one of their candidate parents or of those above.',
    type: 'integer',
    minimum: 0,
  })
  descendants: number;

  @Shown({
    description: 'Of those the ones that descend from it whichever of the candidates are the parents.',
    type: 'integer',
    minimum: 0,
  })
  certain: number;

  @Shown({
    description:
      'What it makes up of all living animals: the expected shares of founders and descendants added up, in whole animals.',
    minimum: 0,
  })
  animalsWorth: number;

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
