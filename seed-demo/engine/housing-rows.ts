import { dateColumns } from './calendar.ts';
import type { Draft } from './draft.ts';
import type { Ids } from './ids.ts';
import { makeRemarks } from './make-remarks.ts';
import type { Remark } from './plan.ts';
import type { Row } from './rows.ts';

/** Rows of groups with their members over time, of remarks, and of warnings that a keeper has confirmed. */
export function housingRows(
  draft: Draft,
  ids: Ids,
): Record<'pairing' | 'pairing_member' | 'observation' | 'confirmed_warning', Row[]> {
  return {
    pairing: draft.groups.map((group) => ({
      id: ids.group(group),
      keeper_id: ids.keeper(group.plan.keeper),
      name: group.plan.name,
      notes: group.plan.notes ?? null,
    })),
    pairing_member: draft.groups.flatMap((group) =>
      group.stays.map((stay) => ({
        id: ids.fresh(`stay of ${stay.animal.code} in ${group.plan.name}`),
        pairing_id: ids.group(group),
        individual_id: ids.animal(stay.animal.code),
        ...dateColumns('joined', stay.joined),
        ...dateColumns('left', stay.left),
      })),
    ),
    observation: makeRemarks(draft).map((remark) => ({
      id: ids.fresh(`remark on ${remark.about} of ${remark.on}: ${remark.text ?? remark.svlMm ?? ''}`),
      keeper_id: ids.keeper(remark.keeper),
      ...subjectColumns(draft, ids, remark),
      kind: remark.kind,
      ...dateColumns('observed_on', remark.on),
      text: remark.text ?? null,
      svl_mm: remark.svlMm ?? null,
      mass_g: remark.massG ?? null,
    })),
    confirmed_warning: draft.clutches.flatMap((clutch) => {
      const told = clutch.confirmed;
      if (told === null) return [];
      const { code, detail, reason, keeper, at } = told;
      const id = ids.fresh(`confirmation of ${code} on ${clutch.code}`);
      return [
        { id, clutch_id: ids.clutch(clutch), code, detail, reason, keeper_id: ids.keeper(keeper), confirmed_at: at },
      ];
    }),
  };
}

function subjectColumns(draft: Draft, ids: Ids, { about }: Remark): Row {
  const group = draft.groups.find((each) => each.plan.name === about);
  const isAnimal = draft.animals.has(about);
  return {
    individual_id: isAnimal ? ids.animal(about) : null,
    pairing_id: group ? ids.group(group) : null,
    source_id: isAnimal || group ? null : ids.source(about),
  };
}
