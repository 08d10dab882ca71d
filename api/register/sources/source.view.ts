import { sourceKinds, type SourceKind, type Visibility } from '../../../shared/vocabulary.ts';
import { Shown, ShownVisibility } from '../../platform/fields.ts';
import { KeptRecordView } from '../record.view.ts';

/** How founders entered captivity together. */
export class SourceView extends KeptRecordView {
  @Shown({ description: 'What people call it, such as "Import, about 1994"; computed.' })
  title: string;

  @Shown({ description: "The keeper's own code, at most 40 characters.", type: String, nullable: true })
  code: string | null;

  @Shown({ description: 'Kind of source.', enum: sourceKinds })
  kind: SourceKind;

  @Shown({ description: 'When its animals came, EDTF.', type: String, nullable: true })
  date: string | null;

  @Shown({ description: 'From whom; null where a stranger asks.', type: String, nullable: true })
  receivedFrom: string | null;

  @Shown({ description: 'By whom; null where a stranger asks.', type: String, nullable: true })
  receivedBy: string | null;

  @Shown({ description: 'Country of export, ISO 3166-1 code of two letters.', type: String, nullable: true })
  countryOfExport: string | null;

  @Shown({ description: 'References of permits.', type: [String] })
  permitReferences: string[];

  @Shown({ description: 'Label that its animals came under.', type: String, nullable: true })
  labelAsReceived: string | null;

  @Shown({ description: 'What is said about the label.', type: String, nullable: true })
  labelNote: string | null;

  @Shown({ description: 'Kinship assumed between any two animals that came together, 0 to 1.', minimum: 0, maximum: 1 })
  baseKinship: number;

  @Shown({ description: 'Notes.', type: String, nullable: true })
  notes: string | null;

  @ShownVisibility()
  visibility: Visibility;

  @Shown({ description: 'Animals in the register that came from it and may be seen.', type: 'integer', minimum: 0 })
  founders: number;
}
