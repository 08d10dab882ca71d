import { ArrayMinSize } from 'class-validator';
import { ChoiceListField, FlagField, IntegerField, ListField, TextField } from '../../platform/fields.ts';
import { courseKinds, type CourseKind } from './forecast-courses.ts';
import { say } from '../../platform/say.ts';

/** Most pairs of one plan. */
export const PAIRS_MOST = 300;

/** Two animals that are to breed together. */
export class PlannedPairRequest {
  @TextField({ max: 40, description: 'The sire: id or registry number of a living male.' })
  sire: string;

  @TextField({ max: 40, description: 'The dam: id or registry number of a living female.' })
  dam: string;
}

/** Of which plan the next generations are forecast, and how. */
export class PlanForecastRequest {
  @ListField(() => PlannedPairRequest, {
    max: PAIRS_MOST,
    optional: true,
    description: `The pairs of the plan, 1 to ${PAIRS_MOST}; an animal may stand in several, each two animals once. May be left out where \`courses\` asks for \`today\` alone.`,
  })
  pairs: PlannedPairRequest[] = [];

  @ChoiceListField(courseKinds, {
    optional: true,
    description:
      'What is compared; all three if left out. plan: these pairs, their young paired again with least kinship; today: the groups and pairs of the line that stand in the register now; random: the breeders of the plan and their young, mated at random.',
  })
  @ArrayMinSize(1, { message: say`must name at least one course` })
  courses: CourseKind[] = [...courseKinds];

  @IntegerField({ min: 1, max: 10, optional: true, description: 'Generations that are bred, 1 to 10; 5 if left out.' })
  generations = 5;

  @IntegerField({
    min: 2,
    max: 20,
    optional: true,
    description: 'Young of each pair, or of each dam of a group, that grow up, 2 to 20; 4 if left out.',
  })
  youngKept = 4;

  @IntegerField({
    min: 100,
    max: 10_000,
    optional: true,
    description: 'How often the generations are bred, 100 to 10 000; 1000 if left out.',
  })
  replicates = 1000;

  @IntegerField({
    min: 1,
    max: 64,
    optional: true,
    description:
      'Unlinked loci whose genes are followed in each replicate, 1 to 64; 32 if left out. With 1 the intervals say what one gene may meet; with many they come near to the whole genome.',
  })
  loci = 32;

  @IntegerField({
    min: 0,
    max: 2 ** 32 - 1,
    optional: true,
    description:
      'Seed of the drawing: the same seed, question and revision of the register give the same answer, to the last digit; 1 if left out.',
  })
  seed = 1;

  @FlagField({
    optional: true,
    description:
      'Take pairs with animals of another line or of none, too: their young would be a cross. No if left out.',
  })
  crossLines = false;
}
