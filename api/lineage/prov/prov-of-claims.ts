import type { ClaimView } from '../../provenance/claims/claim.view.ts';
import type { EvidenceView } from '../../provenance/evidence/evidence.view.ts';
import { double, typed, type ProvStatements } from './prov-document.ts';

/** What stands for a derivation from a document: first-hand material, something repeated, or only a look. */
const derivations = { primary: 'prov:PrimarySource', secondary: 'prov:Quotation', appearance: 'lk:Look' } as const;

/** Says what is claimed of the records of a document, by whom, and on which evidence; of people nothing where they are not named. */
export function tellClaims(
  statements: ProvStatements,
  claims: readonly ClaimView[],
  evidence: readonly EvidenceView[],
): void {
  for (const claim of claims) tellClaim(statements, claim);
  for (const piece of evidence) tellEvidence(statements, piece);
}

function tellClaim(statements: ProvStatements, claim: ClaimView): void {
  const [name, entry] = [`record:${claim.id}`, `activity:entry-${claim.id}`];
  const { place } = claim;
  const number = (value: number | null) => (value === null ? null : double(value));
  statements.add('entity', name, {
    'prov:type': typed('lk:Claim'),
    'prov:label': `said to come from “${claim.value}”`,
    'prov:value': claim.value,
    'lk:aspect': claim.aspect,
    'lk:standing': claim.standing.standing,
    'lk:statedOn': claim.statedOn,
    'dwc:countryCode': place.countryCode,
    'dwc:stateProvince': place.stateProvince,
    'dwc:locality': place.locality,
    'dwc:verbatimLocality': place.verbatimLocality,
    'dwc:decimalLatitude': number(place.decimalLatitude),
    'dwc:decimalLongitude': number(place.decimalLongitude),
    'dwc:geodeticDatum': place.geodeticDatum,
    'dwc:coordinateUncertaintyInMeters': number(place.coordinateUncertaintyM),
    'dwc:dataGeneralizations': place.dataGeneralizations,
    'dwc:informationWithheld': place.informationWithheld,
  });
  statements.add('activity', entry, {
    'prov:type': typed('lk:DataEntry'),
    'prov:startTime': claim.createdAt,
    'prov:endTime': claim.createdAt,
  });
  statements.relate('wasGeneratedBy', { 'prov:entity': name, 'prov:activity': entry, 'prov:time': claim.createdAt });
  statements.relate('wasInfluencedBy', {
    'prov:influencee': `record:${claim.individualId ?? claim.sourceId ?? ''}`,
    'prov:influencer': name,
    'prov:type': typed('lk:About'),
  });
  if (claim.keeperId !== null) {
    statements.add('agent', `record:${claim.keeperId}`, {
      'prov:type': typed('prov:Person'),
      'prov:label': claim.keeper,
    });
    statements.relate('wasAssociatedWith', { 'prov:activity': entry, 'prov:agent': `record:${claim.keeperId}` });
  }
  tellParty(statements, name, claim.statedBy);
}

function tellEvidence(statements: ProvStatements, piece: EvidenceView): void {
  const name = `record:${piece.id}`;
  statements.add('entity', name, {
    'prov:type': typed('lk:Evidence'),
    'prov:label': piece.reference,
    'lk:kind': piece.kind,
    'lk:rank': piece.rank,
    'lk:bearing': piece.bearing,
    'lk:dated': piece.dated,
  });
  tellParty(statements, name, piece.issuedBy);
  const claim = `record:${piece.claimId}`;
  if (piece.bearing === 'contradicts')
    statements.relate('wasInfluencedBy', {
      'prov:influencee': claim,
      'prov:influencer': name,
      'prov:type': typed('lk:Contradiction'),
    });
  else
    statements.relate('wasDerivedFrom', {
      'prov:generatedEntity': claim,
      'prov:usedEntity': name,
      'prov:type': typed(derivations[piece.rank]),
    });
}

/** Whoever is only known by a name that stands on a paper. */
function tellParty(statements: ProvStatements, entity: string, party: string | null): void {
  if (party === null) return;
  const agent = `party:${encodeURIComponent(party).replace(/[^\w-]/gu, (sign) => `-${sign.charCodeAt(0).toString(16)}`)}`;
  statements.add('agent', agent, { 'prov:label': party });
  statements.relate('wasAttributedTo', { 'prov:entity': entity, 'prov:agent': agent });
}
