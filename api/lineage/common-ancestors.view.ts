import { Shown } from '../platform/fields.ts';
import { AnimalRef, AsOfView, ShareSourceView, ShareClutchView } from './lineage.view.ts';

/** Where loops close; one of `ancestor`, `unknownParentOf` and `sources` is there. */
export class MeetingView {
  @Shown({ description: 'The common ancestor.', type: AnimalRef, required: false })
  ancestor?: AnimalRef;

  @Shown({
    description: 'The clutch of which nobody knows a parent: its young share it, so that it is a common ancestor.',
    type: ShareClutchView,
    required: false,
  })
  unknownParentOf?: ShareClutchView;

  @Shown({
    description:
      'The source, or the two sources, whose founders count as kin to each other by the base kinship stated.',
    type: [ShareSourceView],
    required: false,
  })
  sources?: ShareSourceView[];
}

/** One common ancestor with what F owes to it. */
export class CommonAncestorView extends MeetingView {
  @Shown({ description: 'Its part of F, above 0 to 1, without unit.', minimum: 0, maximum: 1 })
  part: number;

  @Shown({
    description:
      'Number of loops through it: pairs of paths from the two parents up to it that share no other animal. With uncertain parents every possible ' +
      'one counts. Rounded above 2^53; null above 1.8e308.',
    type: Number,
    nullable: true,
    minimum: 0,
  })
  loops: number | null;

  @Shown({
    description:
      'Steps of its shortest loop: from one parent up to it and down to the other; 0 would be a parent with itself.',
    type: 'integer',
    minimum: 0,
  })
  shortest: number;

  @Shown({ description: 'Steps of its longest loop.', type: 'integer', minimum: 0 })
  longest: number;
}

/** Why F of one animal is what it is. */
export class CommonAncestorsView {
  @Shown({
    description:
      'Inbreeding coefficient F, the probability that two alleles at a locus are identical by descent (Wright 1922).',
    minimum: 0,
    maximum: 1,
  })
  inbreeding: number;

  @Shown({
    description:
      'Whether F could be taken apart. False for a pedigree with more than half a million pairs of ancestors; the list is empty then.',
  })
  isTakenApart: boolean;

  @Shown({ description: 'The common ancestors, the largest part first.', type: [CommonAncestorView] })
  ancestors: CommonAncestorView[];

  @Shown({ description: 'How many further common ancestors are not named.', type: 'integer', minimum: 0 })
  others: number;

  @Shown({ description: 'Their part of F together.', minimum: 0, maximum: 1 })
  othersPart: number;

  @Shown({ description: 'Whether these figures follow the newest change; false while they are being recomputed.' })
  current: boolean;

  @Shown({ description: 'The state of the register that the figures belong to.', type: AsOfView })
  asOf: AsOfView;
}
