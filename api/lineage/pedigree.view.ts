import { ApiExtraModels, getSchemaPath } from '@nestjs/swagger';
import {
  sexes,
  sourceKinds,
  standings,
  statuses,
  type Sex,
  type SourceKind,
  type Standing,
  type Status,
} from '../../shared/vocabulary.ts';
import { Shown, ShownDay } from '../platform/fields.ts';
import { StandingShareView } from './lineage.view.ts';

const share = { type: 'number', minimum: 0, maximum: 1 } as const;

/** An animal in a chart. */
export class IndividualNodeView {
  @Shown({ description: 'What the node is.', enum: ['individual'] })
  kind: 'individual';

  @Shown({
    description:
      'Id of the individual. One that may not be seen is "private-1" and so on, numbered within the answer; then nothing but its place in the graph is told.',
  })
  id: string;

  @Shown({ description: 'Whether it is a private animal that whoever asks may not see.' })
  isPrivate: boolean;

  @Shown({
    description: 'Registry number; null where it may not be seen.',
    type: String,
    nullable: true,
    example: '10704-4',
  })
  number: string | null;

  @Shown({ description: "The keeper's own code.", type: String, nullable: true })
  code: string | null;

  @Shown({ description: 'Sex as recorded.', enum: sexes })
  sex: Sex;

  @Shown({ description: 'Status as recorded.', enum: statuses })
  status: Status;

  @Shown({ description: 'Hatching date, EDTF.', type: String, nullable: true })
  hatched: string | null;

  @ShownDay('First', 'hatching date')
  earliest: string | null;

  @ShownDay('Last', 'hatching date')
  latest: string | null;

  @Shown({ description: 'Name of its line.', type: String, nullable: true })
  line: string | null;

  @Shown({
    description: 'Scientific name of its species; null where it may not be seen.',
    type: String,
    nullable: true,
  })
  species: string | null;

  @Shown({ description: 'Whether it has neither a source nor a clutch.' })
  unknownOrigin: boolean;

  @Shown({ description: 'Whether its clutch is recorded but lies beyond this chart.' })
  hasMoreAncestors: boolean;

  @Shown({ description: 'Whether the record was withdrawn; its young keep it as an ancestor.' })
  withdrawn: boolean;

  @Shown({
    description: 'Expected genome shares by standing, best first; they sum to 1. Empty where it may not be seen.',
    type: [StandingShareView],
  })
  standings: StandingShareView[];

  @Shown({
    description: 'Expected inbreeding coefficient, 0 to 1 (Wright 1922). Null where nothing is known.',
    ...share,
    nullable: true,
  })
  inbreeding: number | null;
}

/** A candidate pair of a clutch of which the sexes are not known. */
export class ChartPairView {
  @Shown({ description: 'Id of one of the two, as its node has it.' })
  a: string;

  @Shown({ description: 'Id of the other, as its node has it.' })
  b: string;

  @Shown({ description: 'Probability that these two are the parents, above 0, at most 1.', ...share })
  probability: number;
}

/** A clutch in a chart. */
export class ClutchNodeView {
  @Shown({ description: 'What the node is.', enum: ['clutch'] })
  kind: 'clutch';

  @Shown({ description: 'Id of the clutch; "private-clutch-1" and so on where it may not be seen.' })
  id: string;

  @Shown({ description: 'Whether it is a private clutch that whoever asks may not see.' })
  isPrivate: boolean;

  @Shown({ description: 'What it is called.', example: 'clutch of 2021-04-12' })
  title: string;

  @Shown({ description: 'Laying date, EDTF.', type: String, nullable: true })
  laid: string | null;

  @ShownDay('First', 'laying date')
  earliest: string | null;

  @ShownDay('Last', 'laying date')
  latest: string | null;

  @Shown({
    description:
      'Joint candidate pairs, the likeliest 50, where parents are recorded so; null where sires and dams are listed.',
    type: [ChartPairView],
    nullable: true,
  })
  pairs: ChartPairView[] | null;

  @Shown({ description: 'Probability that the sire is a frog nobody knows, 0 to 1.', ...share })
  unknownSire: number;

  @Shown({ description: 'Probability that the dam is a frog nobody knows, 0 to 1.', ...share })
  unknownDam: number;
}

/** A source in a chart. */
export class SourceNodeView {
  @Shown({ description: 'What the node is.', enum: ['source'] })
  kind: 'source';

  @Shown({ description: 'Id of the source; "private-source-1" and so on where it may not be seen.' })
  id: string;

  @Shown({ description: 'Whether it is a private source that whoever asks may not see.' })
  isPrivate: boolean;

  @Shown({ description: 'What it is called.', example: 'Import, about 1994' })
  title: string;

  @Shown({ description: 'Kind of source.', enum: sourceKinds })
  sourceKind: SourceKind;

  @Shown({ description: 'The label it was received under.', type: String, nullable: true })
  label: string | null;

  @Shown({ description: 'Date of the source, EDTF.', type: String, nullable: true })
  date: string | null;

  @ShownDay('First', 'date')
  earliest: string | null;

  @ShownDay('Last', 'date')
  latest: string | null;

  @Shown({ description: 'How well its label stands, by rule.', enum: standings })
  standing: Standing;

  @Shown({ description: 'Assumed kinship of its founders with each other, 0 to 1.', ...share })
  baseKinship: number;
}

/** A line of a chart, from above to below in time. */
export class PedigreeEdgeView {
  @Shown({ description: 'Id of the upper node.' })
  from: string;

  @Shown({ description: 'Id of the lower node.' })
  to: string;

  @Shown({
    description: 'parent: individual to clutch; young: clutch to individual; founder: source to individual.',
    enum: ['parent', 'young', 'founder'],
  })
  kind: 'parent' | 'young' | 'founder';

  @Shown({
    description: 'Of a parent: as what; `either` where sexes are not known.',
    enum: ['sire', 'dam', 'either'],
    required: false,
  })
  role?: 'sire' | 'dam' | 'either';

  @Shown({ description: 'Of a parent: the probability that it is one, above 0, at most 1.', ...share, required: false })
  probability?: number;
}

/** The ancestors of one animal. */
@ApiExtraModels(IndividualNodeView, ClutchNodeView, SourceNodeView)
export class PedigreeView {
  @Shown({ description: 'Id of the animal asked about.', format: 'uuid' })
  root: string;

  @Shown({
    description: 'All nodes, each once, in the order of their ids.',
    type: 'array',
    items: {
      oneOf: [IndividualNodeView, ClutchNodeView, SourceNodeView].map((view) => ({ $ref: getSchemaPath(view) })),
      discriminator: {
        propertyName: 'kind',
        mapping: {
          individual: getSchemaPath(IndividualNodeView),
          clutch: getSchemaPath(ClutchNodeView),
          source: getSchemaPath(SourceNodeView),
        },
      },
    },
  })
  nodes: (IndividualNodeView | ClutchNodeView | SourceNodeView)[];

  @Shown({ description: 'All edges, in the order of the ids that they join.', type: [PedigreeEdgeView] })
  edges: PedigreeEdgeView[];

  @Shown({ description: 'Whether the chart ended early because it reached `nodeLimit` nodes (or 20 000 edges).' })
  truncated: boolean;

  @Shown({ description: 'Most nodes that a chart has.', type: 'integer', minimum: 1 })
  nodeLimit: number;
}
