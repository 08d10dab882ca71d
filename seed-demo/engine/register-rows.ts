import { traitNames } from '../../shared/vocabulary.ts';
import { dateColumns } from './calendar.ts';
import type { Draft } from './draft.ts';
import type { Ids } from './ids.ts';
import type { Row } from './rows.ts';

/** Rows of what stands before any animal: keepers, club, species with their ranges, lines, sources. */
export function registerRows(
  draft: Draft,
  ids: Ids,
): Record<'keeper' | 'club' | 'species' | 'species_range' | 'line' | 'source', Row[]> {
  const { plan } = draft;
  return {
    keeper: plan.keepers.map((name, index) => ({
      id: ids.keeper(name),
      name,
      roles: index === 0 ? ['registrar', 'administrator'] : index === 1 ? ['registrar'] : [],
    })),
    club: [{ name: plan.name, demo: true }],
    species: plan.species.map((each) => ({
      id: ids.species(each.scientificName),
      scientific_name: each.scientificName,
      common_name: each.commonName,
      cites_appendix: each.citesAppendix,
      native_range: each.nativeRange,
    })),
    species_range: plan.species.flatMap((each) =>
      traitNames.map((trait) => {
        const { usual, extreme, source } = each.ranges[trait];
        return {
          species_id: ids.species(each.scientificName),
          trait,
          usual_least: usual[0],
          usual_most: usual[1],
          extreme_least: extreme?.[0] ?? null,
          extreme_most: extreme?.[1] ?? null,
          source,
        };
      }),
    ),
    line: plan.lines.map((line) => ({
      id: ids.line(line.prefix),
      species_id: ids.species(line.species),
      name: line.name,
      label_kind: line.labelKind,
      policy: line.policy ?? null,
    })),
    source: sourceRows(draft, ids),
  };
}

function sourceRows(draft: Draft, ids: Ids): Row[] {
  return draft.plan.lines
    .flatMap((line) => line.sources)
    .map((source) => ({
      id: ids.source(source.code),
      keeper_id: ids.keeper(source.keeper),
      code: source.code,
      kind: source.kind,
      ...dateColumns('date', source.date ?? null),
      received_from: source.receivedFrom ?? null,
      received_by: source.receivedBy ?? null,
      country_of_export: source.countryOfExport ?? null,
      permit_references: source.permitReferences ?? [],
      label_as_received: source.labelAsReceived ?? null,
      label_note: source.labelNote ?? null,
      base_kinship: source.baseKinship ?? 0,
      notes: source.notes ?? null,
    }));
}
