import { Shown } from '../platform/fields.ts';
import { InbreedingRangeView } from './inbreeding.view.ts';
import { AsOfView, FlagView, OtherLabelView, PairView, StandingShareView, TracedShareView } from './lineage.view.ts';

/** Inbreeding that young would have. */
export class ForecastInbreedingView extends InbreedingRangeView {
  @Shown({ description: 'Every possible pair, the likeliest first.', type: [PairView] })
  pairs: PairView[];
}

/** The label that young would carry. */
export class ForecastLabelView {
  @Shown({
    description: 'Expected genome shares of the young by standing, best first; they sum to 1.',
    type: [StandingShareView],
  })
  shares: StandingShareView[];

  @Shown({
    description:
      'How much of the young would be traced to founders that carry their label on paper; 0 without one label.',
    type: TracedShareView,
  })
  tracedShare: TracedShareView;

  @Shown({
    description: 'Labels of founders that are none of `names`, the largest share first.',
    type: [OtherLabelView],
  })
  otherLabels: OtherLabelView[];

  @Shown({
    description: 'Names of the lines that the proposed parents belong to; more than one would make a cross.',
    type: [String],
  })
  names: string[];
}

/** What young of a pairing not yet made would be. */
export class ForecastView {
  @Shown({
    description: 'Inbreeding coefficient of the young, with its range over the possible pairs.',
    type: ForecastInbreedingView,
  })
  inbreeding: ForecastInbreedingView;

  @Shown({ description: 'The label of the young.', type: ForecastLabelView })
  label: ForecastLabelView;

  @Shown({
    description: 'What the audit would hold against the label of the young, the gravest first.',
    type: [FlagView],
  })
  flags: FlagView[];

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
