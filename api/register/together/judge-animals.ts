import { formatRegistryNumber } from '../../../shared/registry-number.ts';
import { isAllowedTo } from '../../people/permissions.ts';
import type { AnimalAtVersion, ChangeTogetherRequest, FieldsTogether } from './together.dto.ts';
import type { AnimalRow, OpenStay } from './together.queries.ts';
import type { AnimalTogetherView, FieldChangeView, Refusal } from './together.view.ts';
import { say } from '../../platform/say.ts';

/** An animal of the change: what is known of it, and what becomes of it. */
export interface Judged {
  readonly view: AnimalTogetherView;
  readonly row: AnimalRow | null;
  /** The stays that it leaves. */
  readonly leaves: readonly OpenStay[];
  /** Whether its own fields change, and whether it goes to live elsewhere. */
  readonly changesFields: boolean;
  readonly moves: boolean;
}

/** Names of what the request names by id. */
export interface TargetNames {
  readonly line: string | null;
  readonly pairing: string | null;
}

/** What the fields of a request make of an animal; a date of death says that it died. */
export function wantedFields(fields: FieldsTogether | undefined): FieldsTogether {
  if (!fields) return {};
  return fields.died !== undefined && fields.died !== null && fields.status === undefined
    ? { ...fields, status: 'died' }
    : fields;
}

const fieldNames = ['sex', 'sexBasis', 'sexedOn', 'status', 'died', 'outOfWater', 'lineId', 'visibility'] as const;

/** Says of one animal what changes of it, or why nothing may; the rules of the database are not asked yet. */
export function judge(
  { id, version }: AnimalAtVersion,
  row: AnimalRow | undefined,
  stays: readonly OpenStay[],
  request: ChangeTogetherRequest,
  names: TargetNames,
): Judged {
  if (!row) return refused(id, null, 'missing', say`There is no animal with this id.`);
  const why = whyNot(row, version, stays, request);
  if (why) return refused(id, row, ...why);
  const fields = fieldChanges(row, wantedFields(request.fields), names);
  const move = moveOf(stays, request, names);
  const remark = request.remark ? [{ field: 'remark', before: null, after: remarkInWords(request.remark) }] : [];
  const changes = [...fields, ...move.told, ...remark];
  return {
    view: viewOf(id, row, changes.length > 0 ? 'changes' : 'same', changes),
    row,
    leaves: move.leaves,
    changesFields: fields.length > 0,
    moves: move.told.length > 0,
  };
}

/** The same animal, refused by a rule that the database holds. */
export const refusedByRule = (judged: Judged, detail: string): Judged =>
  refused(judged.view.id, judged.row, 'rule', detail);

function whyNot(
  row: AnimalRow,
  version: number,
  stays: readonly OpenStay[],
  request: ChangeTogetherRequest,
): [Refusal, string] | null {
  if (row.merged)
    return ['withdrawn', say`This record was merged into another one of the same animal. Change that one instead.`];
  if (row.withdrawn) return ['withdrawn', say`This animal was withdrawn. Restore it first, or leave it out.`];
  if (request.fields && !isAllowedTo('change', 'individual', row))
    return ['not-yours', say`It belongs to ${row.keeper}. Ask them or a registrar, or leave it out.`];
  if (request.fields && row.version !== version)
    return ['stale', say`Somebody changed it after you read it. Look at it again, or leave it out.`];
  if (!request.move) return null;
  const other = stays.find((stay) => !stay.isSeen || !isAllowedTo('change', 'pairing', stay));
  if (!other) return null;
  return [
    'elsewhere',
    say`It lives in a pairing of another keeper. Ask that keeper or a registrar to say when it left there.`,
  ];
}

function fieldChanges(row: AnimalRow, wanted: FieldsTogether, names: TargetNames): FieldChangeView[] {
  return fieldNames.flatMap((field) => {
    const after = wanted[field];
    if (after === undefined || after === row[field]) return [];
    if (field === 'lineId') return [{ field: 'line', before: row.line, after: after === null ? null : names.line }];
    return [{ field, before: row[field], after }];
  });
}

function moveOf(
  stays: readonly OpenStay[],
  { move }: ChangeTogetherRequest,
  names: TargetNames,
): { told: FieldChangeView[]; leaves: OpenStay[] } {
  if (!move) return { told: [], leaves: [] };
  const leaves = stays.filter(({ pairingId }) => pairingId !== move.pairingId);
  const isThere = leaves.length < stays.length;
  if (leaves.length === 0 && (isThere || move.pairingId === null)) return { told: [], leaves: [] };
  const before = stays.map(({ pairing }) => pairing).join(', ');
  return { told: [{ field: 'pairing', before: before === '' ? null : before, after: names.pairing }], leaves };
}

function remarkInWords({ text, svlMm, massG, kind }: NonNullable<ChangeTogetherRequest['remark']>): string {
  const parts = [text, svlMm == null ? null : say`${svlMm} mm`, massG == null ? null : `${massG} g`];
  const said = parts.filter((part) => part != null && part !== '').join(', ');
  return said === '' ? kind : said;
}

function refused(id: string, row: AnimalRow | null, refusal: Refusal, detail: string): Judged {
  return {
    view: { ...viewOf(id, row, 'refused', []), refusal, detail },
    row,
    leaves: [],
    changesFields: false,
    moves: false,
  };
}

function viewOf(
  id: string,
  row: AnimalRow | null,
  outcome: AnimalTogetherView['outcome'],
  changes: FieldChangeView[],
): AnimalTogetherView {
  return {
    id,
    number: row ? formatRegistryNumber(row.number) : null,
    code: row?.code ?? null,
    keeper: row?.keeper ?? null,
    version: row?.version ?? null,
    outcome,
    refusal: null,
    detail: null,
    changes,
  };
}
