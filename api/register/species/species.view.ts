import { citesAppendices, traitNames, traits, type CitesAppendix, type Trait } from '../../../shared/vocabulary.ts';
import { Shown } from '../../platform/fields.ts';
import { RecordView } from '../record.view.ts';

/** One life-history range. */
export class SpeciesRangeView {
  @Shown({ description: 'What is measured.', enum: traitNames })
  trait: Trait;

  @Shown({ description: 'Least usual value, in `unit`.', type: Number, nullable: true, minimum: 0 })
  usualLeast: number | null;

  @Shown({ description: 'Greatest usual value, in `unit`.', type: Number, nullable: true, minimum: 0 })
  usualMost: number | null;

  @Shown({ description: 'Least value ever known, in `unit`.', type: Number, nullable: true, minimum: 0 })
  extremeLeast: number | null;

  @Shown({ description: 'Greatest value ever known, in `unit`.', type: Number, nullable: true, minimum: 0 })
  extremeMost: number | null;

  @Shown({ description: 'Unit of the values.', enum: [...new Set(Object.values(traits))] })
  unit: string;

  @Shown({ description: 'The publication that says so, or "common practice".' })
  source: string;
}

/** A species profile. */
export class SpeciesView extends RecordView {
  @Shown({
    description: 'Id of whoever wrote the profile, who may change it as registrars may; null to strangers.',
    type: String,
    nullable: true,
  })
  keeperId: string | null;

  @Shown({ description: 'Who wrote the profile; null to strangers.', type: String, nullable: true })
  keeper: string | null;

  @Shown({ description: 'Scientific name.' })
  scientificName: string;

  @Shown({ description: 'Common name.', type: String, nullable: true })
  commonName: string | null;

  @Shown({ description: 'CITES appendix that lists it.', enum: citesAppendices, nullable: true })
  citesAppendix: CitesAppendix | null;

  @Shown({ description: 'Countries it lives in, ISO 3166-1 codes of two letters.', type: [String] })
  nativeRange: string[];

  @Shown({ description: 'Life-history ranges; they warn and never forbid.', type: [SpeciesRangeView] })
  ranges: SpeciesRangeView[];
}
