import type TestAgent from 'supertest/lib/agent.js';
import type { ClutchView } from '../../api/register/clutches/clutch.view.ts';
import type { IndividualItemView, IndividualView } from '../../api/register/individuals/individual.view.ts';
import type { LineView } from '../../api/register/lines/line.view.ts';
import type { PairingView } from '../../api/register/pairings/pairing.view.ts';
import type { SourceView } from '../../api/register/sources/source.view.ts';
import type { SpeciesView } from '../../api/register/species/species.view.ts';
import type { AcknowledgementView } from '../../api/provenance/acknowledgements/acknowledgement.view.ts';
import type { ClaimView } from '../../api/provenance/claims/claim.view.ts';
import type { PhotographRecordView } from '../../api/provenance/photographs/photograph.view.ts';
import type { EvidenceView } from '../../api/provenance/evidence/evidence.view.ts';
import type { ObservationView } from '../../api/register/observations/observation.view.ts';
import { picture } from './made-pictures.ts';

type Fields = Record<string, unknown>;

/**
 * Life-history ranges of a medium-sized poison frog: common practice, no source. `between-clutches` takes "about weekly" as 5
 * to 14 days.
 */
export const mediumPoisonFrog = [
  { trait: 'laying-to-hatching', usualLeast: 10, usualMost: 18, extremeLeast: 8, extremeMost: 25 },
  { trait: 'hatching-to-leaving-water', usualLeast: 70, usualMost: 110, extremeLeast: 50, extremeMost: 160 },
  { trait: 'maturity', usualLeast: 10, usualMost: 14, extremeLeast: 8 },
  { trait: 'sexable-by-looks', usualLeast: 10, usualMost: 14, extremeLeast: 8 },
  { trait: 'eggs-per-clutch', usualLeast: 6, usualMost: 8, extremeLeast: 1, extremeMost: 11 },
  { trait: 'between-clutches', usualLeast: 5, usualMost: 14 },
  { trait: 'snout-vent-male', usualLeast: 25, usualMost: 38 },
  { trait: 'snout-vent-female', usualLeast: 31, usualMost: 44 },
  { trait: 'lifespan', usualLeast: 12, usualMost: 15, extremeMost: 20 },
].map((range) => ({ ...range, source: 'common practice' }));

/** Builds valid records through the API; each call makes a new one, whatever is not given being made up. */
export class Factory {
  private readonly http: TestAgent;
  private readonly mark: string;
  private serial = 0;

  /** Names of several factories on one register are told apart by a mark. */
  constructor(http: TestAgent, mark = '') {
    this.http = http;
    this.mark = mark;
  }

  species(fields: Fields = {}): Promise<SpeciesView> {
    return this.post('species', { scientificName: this.unique('Inventus species'), ...fields });
  }

  async line(fields: Fields = {}): Promise<LineView> {
    const speciesId = fields['speciesId'] ?? (await this.species()).id;
    return this.post('lines', { name: this.unique('Line '), labelKind: 'locality', ...fields, speciesId });
  }

  source(fields: Fields = {}): Promise<SourceView> {
    return this.post('sources', { kind: 'import', date: '1994~', ...fields });
  }

  async individual(fields: Fields = {}): Promise<IndividualView> {
    const speciesId = fields['speciesId'] ?? (await this.species()).id;
    return this.post('individuals', { code: this.unique('F-'), ...fields, speciesId });
  }

  /** Several animals of one species, one for each set of fields. */
  async individuals(...all: Fields[]): Promise<IndividualView[]> {
    const speciesId = all.find((fields) => fields['speciesId'])?.['speciesId'] ?? (await this.species()).id;
    const made: IndividualView[] = [];
    for (const fields of all) made.push(await this.individual({ speciesId, ...fields }));
    return made;
  }

  pairing(fields: Fields = {}): Promise<PairingView> {
    return this.post('pairings', { name: this.unique('Tank '), ...fields });
  }

  clutch(fields: Fields = {}): Promise<ClutchView> {
    return this.post('clutches', fields);
  }

  /** A clutch of a certain sire and dam. */
  clutchOf(sireId: string, damId: string, fields: Fields = {}): Promise<ClutchView> {
    return this.clutch({ sires: [{ individualId: sireId }], dams: [{ individualId: damId }], ...fields });
  }

  async offspring(clutchId: string, body: Fields = { count: 1 }): Promise<IndividualItemView[]> {
    return (await this.post<{ items: IndividualItemView[] }>(`clutches/${clutchId}/offspring`, body)).items;
  }

  observation(fields: Fields): Promise<ObservationView> {
    return this.post('observations', { kind: 'note', observedOn: '2024-05-01', text: 'calling', ...fields });
  }

  /** A claim about a new source unless it is about something else. */
  async claim(fields: Fields = {}): Promise<ClaimView> {
    const isAbout = ['sourceId', 'lineId', 'individualId'].some((subject) => subject in fields);
    const about = isAbout ? {} : { sourceId: (await this.source()).id };
    return this.post('claims', { aspect: 'locality', value: this.unique('Quebrada '), ...about, ...fields });
  }

  /** Evidence on a claim, a new one if none is named: a field note that supports it. */
  async evidence(fields: Fields = {}): Promise<EvidenceView> {
    const claim = 'claimId' in fields ? {} : { claimId: (await this.claim()).id };
    const told = { bearing: 'supports', kind: 'field-note', reference: this.unique('note ') };
    return this.post('evidence', { ...told, ...claim, ...fields });
  }

  /** A photograph of an animal, a new one if none is named. */
  async photograph(fields: Record<string, string> = {}): Promise<PhotographRecordView> {
    const individualId = fields['individualId'] ?? (await this.individual()).id;
    const request = this.http.post('/api/v1/photographs').field({ view: 'back', ...fields, individualId });
    const answer = await request.attach('file', await picture(60, 40, ++this.serial).jpeg().toBuffer(), 'back.jpg');
    if (answer.status !== 201) throw new Error(`the photograph was answered ${answer.status}: ${answer.text}`);
    return answer.body as PhotographRecordView;
  }

  /** The acknowledgement of a flag, of an animal that nothing is known of if none is named. The maker is a registrar. */
  async acknowledgement(fields: Fields = {}): Promise<AcknowledgementView> {
    const isOf = ['individualId', 'lineId'].some((subject) => subject in fields);
    const subject = isOf ? {} : { individualId: (await this.individual()).id };
    return this.post('acknowledgements', { code: 'origin-gap', reason: 'nobody left to ask', ...subject, ...fields });
  }

  /** A name that no other record of this factory has. */
  private unique(prefix: string): string {
    return `${prefix}${this.mark}${++this.serial}`;
  }

  /** Sends a body that must be taken. */
  async post<T>(resource: string, body: Fields): Promise<T> {
    const answer = await this.http.post(`/api/v1/${resource}`).send(body);
    if (answer.status !== 201) throw new Error(`POST ${resource} answered ${answer.status}: ${answer.text}`);
    return answer.body as T;
  }
}

/** Two males and a female of one species, all hatched in March 2018: what most tests begin with. */
export async function trio(
  factory: Factory,
): Promise<{ speciesId: string; sire: IndividualView; dam: IndividualView; other: IndividualView }> {
  const { id: speciesId } = await factory.species({ ranges: mediumPoisonFrog });
  const [sire, dam, other] = await factory.individuals(
    { speciesId, sex: 'male', hatched: '2018-03-01' },
    { speciesId, sex: 'female', hatched: '2018-03-01' },
    { speciesId, sex: 'male', hatched: '2018-03-01' },
  );
  if (!sire || !dam || !other) throw new Error('three animals were asked for');
  return { speciesId, sire, dam, other };
}
