import { dateColumns } from './calendar.ts';
import type { Draft } from './draft.ts';
import type { Ids } from './ids.ts';
import type { ClaimPlan, EvidencePlan } from './plan.ts';
import type { Row } from './rows.ts';

/** Rows of what is said of the sources, and of the papers for and against it. */
export function claimRows(draft: Draft, ids: Ids): Record<'claim' | 'evidence', Row[]> {
  const rows = { claim: [] as Row[], evidence: [] as Row[] };
  for (const source of draft.plan.lines.flatMap((line) => line.sources))
    for (const claim of source.claims ?? []) {
      const id = ids.fresh(`claim ${claim.value} of ${source.code}`);
      rows.claim.push(claimRow(claim, id, ids.source(source.code), ids));
      for (const paper of claim.evidence ?? []) rows.evidence.push(evidenceRow(paper, id, ids));
    }
  return rows;
}

function claimRow(claim: ClaimPlan, id: string, sourceId: string, ids: Ids): Row {
  const [latitude = null, longitude = null, uncertainty = null] = claim.at ?? [];
  return {
    id,
    keeper_id: ids.keeper(claim.keeper),
    source_id: sourceId,
    aspect: claim.aspect,
    value: claim.value,
    stated_by: claim.statedBy ?? null,
    ...dateColumns('stated_on', claim.statedOn ?? null),
    locality: claim.locality ?? null,
    country_code: claim.countryCode ?? null,
    decimal_latitude: latitude,
    decimal_longitude: longitude,
    geodetic_datum: claim.at ? 'EPSG:4326' : null,
    coordinate_uncertainty_m: uncertainty,
    georeferenced_by: claim.at ? claim.keeper : null,
    georeference_sources: claim.at ? 'invented: a point in the open sea, so that no real place is pointed at' : null,
    notes: claim.notes ?? null,
  };
}

function evidenceRow(paper: EvidencePlan, claimId: string, ids: Ids): Row {
  const { reviewed } = paper;
  return {
    id: ids.fresh(`evidence ${paper.reference}`),
    claim_id: claimId,
    keeper_id: ids.keeper(paper.keeper),
    bearing: paper.bearing ?? 'supports',
    kind: paper.kind,
    names: paper.names ?? 'claim',
    reference: paper.reference,
    issued_by: paper.issuedBy ?? null,
    ...dateColumns('dated', paper.dated ?? null),
    notes: paper.notes ?? null,
    review: reviewed?.as ?? 'pending',
    reviewer_id: reviewed ? ids.keeper(reviewed.by) : null,
    reviewed_at: reviewed ? `${reviewed.on}T19:00:00Z` : null,
    review_reason: reviewed?.reason ?? null,
  };
}
