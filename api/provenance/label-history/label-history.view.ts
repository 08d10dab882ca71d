import { labelKinds, type LabelKind } from '../../../shared/vocabulary.ts';
import { Shown } from '../../platform/fields.ts';

/** What can happen to a label. */
export const labelEvents = [
  'received',
  'entered',
  'line-changed',
  'line-renamed',
  'claimed',
  'claim-changed',
  'claim-withdrawn',
  'evidence-accepted',
  'evidence-rejected',
  'evidence-withdrawn',
] as const;
export type LabelEvent = (typeof labelEvents)[number];

export const historyRecords = ['individual', 'line', 'source', 'claim', 'evidence'] as const;
export type HistoryRecord = (typeof historyRecords)[number];

const text = (description: string): PropertyDecorator => Shown({ description, type: String, nullable: true });

/** The record that an event tells of. */
export class HistoryRecordView {
  @Shown({ description: 'Kind of record.', enum: historyRecords })
  kind: HistoryRecord;

  @Shown({ description: 'Its id.', format: 'uuid' })
  id: string;

  @Shown({ description: 'What it is called.', example: 'Import, about 1994' })
  title: string;
}

/** One event of the history of a label. */
export class LabelEventView {
  @Shown({
    description:
      'What happened: received: it came under this label; entered: it was entered into the register under it; line-changed: it was put into another line; ' +
      'line-renamed: its line got another name; claimed, claim-changed, claim-withdrawn: somebody’s claim; evidence-…: a registrar’s verdict, or that it was withdrawn.',
    enum: labelEvents,
  })
  event: LabelEvent;

  @text('When: EDTF, a calendar day in UTC for what happened in the register; null where it is not recorded.')
  date: string | null;

  @Shown({
    description: 'The instant, RFC 3339 in UTC, of what happened in the register; null for what happened before.',
    type: String,
    format: 'date-time',
    nullable: true,
  })
  at: string | null;

  @text('Who did or said it; null where it is not known, and where a stranger asks.')
  who: string | null;

  @text('The label after it, or the one that a claim or its evidence speaks of; null for none.')
  label: string | null;

  @text('The label before it, of a change; else null.')
  before: string | null;

  @text('Why, as far as a reason was given; null where a stranger asks.')
  reason: string | null;

  @Shown({ description: 'The record that it is about.', type: HistoryRecordView })
  record: HistoryRecordView;
}

/** The label of today. */
export class PresentLabelView {
  @Shown({ description: 'Name of the line.', example: 'Quebrada Honda' })
  name: string;

  @Shown({ description: 'What kind of label it is.', enum: labelKinds })
  kind: LabelKind;
}

/** What an animal or a line was called over time. */
export class LabelHistoryView {
  @Shown({ description: 'The label of today; null where it is in no line.', type: PresentLabelView, nullable: true })
  present: PresentLabelView | null;

  @Shown({ description: 'What happened to its label, the oldest first.', type: [LabelEventView] })
  events: LabelEventView[];

  @Shown({ description: 'Whether there are more events than are told here.' })
  isCut: boolean;
}
