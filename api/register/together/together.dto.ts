import {
  observationKinds,
  sexBases,
  sexes,
  statuses,
  type ObservationKind,
  type Sex,
  type SexBasis,
  type Status,
  type Visibility,
} from '../../../shared/vocabulary.ts';
import {
  ChoiceField,
  DateField,
  FlagField,
  IdField,
  IntegerField,
  ListField,
  NumberField,
  ObjectField,
  TextField,
  VisibilityField,
} from '../../platform/fields.ts';

/** Most animals that are changed together. */
export const mostTogether = 1000;

/** Whether the change is only looked at. */
export class TogetherQuery {
  @FlagField({ optional: true, description: 'Only tell what would change, and what stands against it; write nothing.' })
  dryRun = false;
}

/** An animal, and the version of it that the change was made from. */
export class AnimalAtVersion {
  @IdField({ description: 'The animal.' })
  id: string;

  @IntegerField({ min: 1, max: 2_000_000_000, description: 'Its version when it was read.' })
  version: number;
}

/** The fields that each of the animals gets; what is left out stays as it is. */
export class FieldsTogether {
  @ChoiceField(sexes, { optional: true, description: 'Sex.' })
  sex?: Sex;

  @ChoiceField(sexBases, { optional: true, nullable: true, description: 'How the sex came to be known.' })
  sexBasis?: SexBasis | null;

  @DateField({ optional: true, nullable: true, description: 'When the sex came to be known.' })
  sexedOn?: string | null;

  @ChoiceField(statuses, { optional: true, description: 'Whether they live.' })
  status?: Status;

  @DateField({ optional: true, nullable: true, description: 'When they died; their status is then died.' })
  died?: string | null;

  @DateField({ optional: true, nullable: true, description: 'When they left the water.' })
  outOfWater?: string | null;

  @IdField({ optional: true, nullable: true, description: 'Their line, which must be of their species.' })
  lineId?: string | null;

  @VisibilityField('Who may see them.')
  visibility?: Visibility;
}

/** Where the animals go to live. */
export class MoveTogether {
  @IdField({ nullable: true, description: 'The pairing that they join; null: they only leave where they live.' })
  pairingId: string | null;

  @DateField({ description: 'The day on which they leave where they live and join.' })
  on: string;
}

/** A remark that each of the animals gets; a text or a measurement. */
export class RemarkTogether {
  @ChoiceField(observationKinds, { description: 'Kind of remark.' })
  kind: ObservationKind;

  @DateField({ description: 'When it was observed.' })
  observedOn: string;

  @TextField({ max: 10_000, optional: true, nullable: true, description: 'What was observed.' })
  text?: string | null;

  @NumberField({ min: 0.1, max: 500, optional: true, nullable: true, description: 'Snout-vent length in millimetres.' })
  svlMm?: number | null;

  @NumberField({ min: 0.001, max: 5000, optional: true, nullable: true, description: 'Mass in grams.' })
  massG?: number | null;

  @VisibilityField('Who may see it; club if left out. A private remark is seen by its keeper alone.')
  visibility?: Visibility;
}

/** One change of several animals: fields, a move and a remark, any of them or all. */
export class ChangeTogetherRequest {
  @ListField(() => AnimalAtVersion, { min: 1, max: mostTogether, description: 'The animals, each once.' })
  animals: AnimalAtVersion[];

  @ObjectField(() => FieldsTogether, { optional: true, description: 'Fields that each of them gets.' })
  fields?: FieldsTogether;

  @ObjectField(() => MoveTogether, { optional: true, description: 'Where they go to live.' })
  move?: MoveTogether;

  @ObjectField(() => RemarkTogether, { optional: true, description: 'A remark that each of them gets.' })
  remark?: RemarkTogether;
}
