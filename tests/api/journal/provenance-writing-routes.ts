import { contentHash } from '../../../api/platform/file-store.ts';
import { newId } from '../../../api/platform/ids.ts';
import type { TestApi } from '../../support/api.ts';
import { Factory } from '../../support/factories.ts';
import { madePdf } from '../../support/made-pdf.ts';
import { picture } from '../../support/made-pictures.ts';
import { adding, changing, idIn, restoring, withdrawing, type Scenario, type Written } from './writing-routes.ts';

/** Every route that changes claims, evidence, photographs and acknowledged flags, and what it must leave behind. */
export function provenanceRoutes(api: TestApi, make: Factory): Readonly<Record<string, Scenario>> {
  /** Nobody reviews their own: another keeper brings it. */
  const reviewing = async (): Promise<Written> => {
    const other = new Factory((await api.addKeeper(`Bringer ${newId()}`)).http);
    const { id } = await other.evidence();
    const answer = await api.http
      .post(`/api/v1/evidence/${id}/review`)
      .set('If-Match', '*')
      .send({ verdict: 'accepted', reason: 'seen it' })
      .expect(201);
    const [before, after] = [{ review: 'pending' }, { review: 'accepted', reviewReason: 'seen it' }];
    return { answer, recordId: id, before, after, reason: 'seen it' };
  };

  const puttingFile = async (): Promise<Written> => {
    const { id } = await make.evidence();
    const paper = madePdf();
    const put = api.http.put(`/api/v1/evidence/${id}/file`).set('If-Match', '*');
    const answer = await put.attach('file', paper, 'paper.pdf').expect(200);
    return { answer, recordId: id, before: { fileHash: null }, after: { fileHash: contentHash(paper) } };
  };

  const photographing = async (): Promise<Written> => {
    const sent = { individualId: (await make.individual()).id, view: 'belly', takenOn: '2021-05' };
    const request = api.http.post('/api/v1/photographs').field(sent);
    const answer = await request.attach('file', await picture().png().toBuffer(), 'belly.png').expect(201);
    return { answer, recordId: idIn(answer), before: null, after: sent };
  };

  return {
    'post /api/v1/claims': [
      'added',
      'claim',
      adding('claims', async () => ({
        sourceId: (await make.source()).id,
        aspect: 'locality',
        value: 'Quebrada Honda',
        verbatimLocality: 'Q. Honda',
      })),
    ],
    'patch /api/v1/claims/{id}': [
      'changed',
      'claim',
      changing('claims', () => make.claim({ notes: 'heard' }), { notes: 'heard' }, { notes: 'read' }),
    ],
    'post /api/v1/claims/{id}/withdrawal': ['withdrawn', 'claim', withdrawing('claims', () => make.claim())],
    'delete /api/v1/claims/{id}/withdrawal': ['restored', 'claim', restoring('claims', () => make.claim())],
    'post /api/v1/evidence': [
      'added',
      'evidence',
      adding('evidence', async () => ({
        claimId: (await make.claim()).id,
        bearing: 'supports',
        kind: 'letter',
        reference: 'letter of a previous keeper',
      })),
    ],
    'patch /api/v1/evidence/{id}': [
      'changed',
      'evidence',
      changing('evidence', () => make.evidence({ notes: 'heard' }), { notes: 'heard' }, { notes: 'read' }),
    ],
    'post /api/v1/evidence/{id}/review': ['reviewed', 'evidence', reviewing],
    'post /api/v1/evidence/{id}/withdrawal': ['withdrawn', 'evidence', withdrawing('evidence', () => make.evidence())],
    'delete /api/v1/evidence/{id}/withdrawal': ['restored', 'evidence', restoring('evidence', () => make.evidence())],
    'put /api/v1/evidence/{id}/file': ['changed', 'evidence', puttingFile],
    'post /api/v1/photographs': ['added', 'photograph', photographing],
    'patch /api/v1/photographs/{id}': [
      'changed',
      'photograph',
      changing('photographs', () => make.photograph({ notes: 'a scar' }), { notes: 'a scar' }, { notes: 'a spot' }),
    ],
    'post /api/v1/photographs/{id}/withdrawal': [
      'withdrawn',
      'photograph',
      withdrawing('photographs', () => make.photograph()),
    ],
    'delete /api/v1/photographs/{id}/withdrawal': [
      'restored',
      'photograph',
      restoring('photographs', () => make.photograph()),
    ],
    'post /api/v1/acknowledgements': [
      'added',
      'flag_acknowledgement',
      adding('acknowledgements', async () => ({
        individualId: (await make.individual()).id,
        code: 'origin-gap',
        reason: 'nobody left to ask',
      })),
    ],
    'post /api/v1/acknowledgements/{id}/withdrawal': [
      'withdrawn',
      'flag_acknowledgement',
      withdrawing('acknowledgements', () => make.acknowledgement()),
    ],
    'delete /api/v1/acknowledgements/{id}/withdrawal': [
      'restored',
      'flag_acknowledgement',
      restoring('acknowledgements', () => make.acknowledgement()),
    ],
  };
}
