import type { DataSource } from 'typeorm';
import { newId } from '../../api/platform/ids.ts';
import type { Bearing, ClaimAspect, EvidenceKind, EvidenceNames, Review } from '../../shared/vocabulary.ts';

/** Evidence in short. */
export interface SketchEvidence {
  readonly kind: EvidenceKind;
  readonly bearing?: Bearing;
  readonly names?: EvidenceNames;
  readonly review?: Review;
  /** A calendar date. */
  readonly dated?: string;
}

/** A claim in short: about one record, with its evidence, accepted unless something else is said. */
export interface SketchClaim {
  readonly about: { readonly source: string } | { readonly line: string } | { readonly individual: string };
  readonly value: string;
  readonly aspect?: ClaimAspect;
  readonly country?: string;
  readonly evidence?: readonly SketchEvidence[];
}

/** Writes claims straight by SQL, as `writeSketch` writes animals; one claim of a record may stand for each aspect and value. */
export async function writeClaims(dataSource: DataSource, claims: readonly SketchClaim[]): Promise<void> {
  await dataSource.transaction(async (manager) => {
    const [people] = await manager.query<{ keeper: string; reviewer: string }[]>(
      `with made as (insert into keeper (name) select 'Sketch Reviewer ' || gen_random_uuid() returning id)
       select (select id from keeper limit 1) as keeper, (select id from made) as reviewer`,
    );
    for (const { about, value, aspect = 'locality', country, evidence = [] } of claims) {
      const id = newId();
      const column = 'source' in about ? 'source_id' : 'line' in about ? 'line_id' : 'individual_id';
      await manager.query(
        `insert into claim (id, keeper_id, ${column}, aspect, value, country_code) values ($1, $2, $3, $4, $5, $6)`,
        [id, people?.keeper, Object.values(about)[0], aspect, value, country ?? null],
      );
      for (const { kind, bearing = 'supports', names = 'claim', review = 'accepted', dated } of evidence)
        await manager.query(
          `insert into evidence (claim_id, keeper_id, kind, bearing, names, reference, dated, dated_earliest, dated_latest,
             review, reviewer_id, reviewed_at, review_reason)
           select $1, $2, $3, $4, $5, 'a paper', $6::text, $6::text::date, $6::text::date, $7::text, r.id, case when r.id is not null then now() end,
             case when r.id is not null then 'read' end
           from (select case when $7::text = 'pending' then null else $8::uuid end as id) r`,
          [id, people?.keeper, kind, bearing, names, dated ?? null, review, people?.reviewer],
        );
    }
  });
}
