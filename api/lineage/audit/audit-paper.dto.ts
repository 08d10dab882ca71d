import { ChoiceField } from '../../platform/fields.ts';
import { paperSizes, type PaperSize } from '../../platform/pdf/paper.ts';

/** How an audit is put on paper. */
export class AuditPaperQuery {
  @ChoiceField(paperSizes, { optional: true, description: 'Paper that it is written for; left out, A4.' })
  paper?: PaperSize;
}
