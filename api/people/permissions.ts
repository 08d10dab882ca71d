import { createMongoAbility, subject, type MongoAbility, type RawRuleOf } from '@casl/ability';
import { Problem, type ProblemError } from '../platform/problem.ts';
import { SignInProblem, viewer, type Viewer } from '../platform/acting.ts';
import { say } from '../platform/say.ts';

/**
 * What can be done. `change` includes withdrawing and restoring; `ask` is a question that is put by POST and writes nothing;
 * `review` is to say whether evidence counts.
 */
export type Action = 'read' | 'ask' | 'add' | 'change' | 'merge' | 'review';

/** What it can be done to. `account`: one's own password, sessions and tokens. */
export type Subject =
  | 'account'
  | 'club'
  | 'keeper'
  | 'link'
  | 'species'
  | 'line'
  | 'source'
  | 'individual'
  | 'pairing'
  | 'clutch'
  | 'observation'
  | 'warning'
  | 'claim'
  | 'evidence'
  | 'photograph'
  | 'acknowledgement'
  | 'transfer'
  | 'plan'
  | 'lineage'
  | 'import'
  | 'other-register'
  | 'journal'
  | 'sheet'
  | 'signing-key'
  | 'metrics';

/** A record as far as a permission looks at it. */
type Owned = Readonly<Record<'keeperId', string | null>>;

type ClubAbility = MongoAbility<[Action, Subject | (Owned & { readonly __caslSubjectType__?: Subject })]>;
export type PermissionRule = RawRuleOf<ClubAbility>;

const register: Subject[] = ['species', 'line', 'source', 'individual', 'pairing', 'clutch', 'observation'];
const provenance: Subject[] = ['claim', 'evidence', 'photograph'];
const shownToStrangers: Subject[] = [
  'species',
  'line',
  'source',
  'individual',
  'observation',
  'claim',
  'photograph',
  'lineage',
];

/**
 * The permission table of the club: what is not here is refused. Which single records somebody may see is another question, answered
 * by visibility.ts.
 */
export function permissionsOf(who: Viewer, club: { readonly publicReading: boolean }): PermissionRule[] {
  if (who === null) return club.publicReading ? [{ action: 'read', subject: shownToStrangers }] : [];
  const own = { keeperId: who.id };
  const rules: PermissionRule[] = [
    {
      action: ['read', 'ask'],
      subject: [
        'club',
        'keeper',
        ...register,
        ...provenance,
        'acknowledgement',
        'transfer',
        'warning',
        'lineage',
        'import',
        'other-register',
        'journal',
        'plan',
        'sheet',
      ],
    },
    // to add to the journal is to undo what it tells of; that needs the permission for the change itself
    { action: 'add', subject: [...register, ...provenance, 'transfer', 'plan', 'import', 'journal', 'sheet'] },
    // a transfer belongs to two: the giver for withdrawing it, the receiver for answering it
    { action: 'change', subject: [...register, ...provenance, 'transfer', 'plan', 'import', 'sheet'], conditions: own },
    { action: ['read', 'add', 'change'], subject: 'account' },
  ];
  if (who.roles.includes('registrar'))
    rules.push(
      { action: 'change', subject: [...register, ...provenance, 'transfer', 'plan', 'import', 'sheet'] },
      { action: ['add', 'change'], subject: ['acknowledgement', 'other-register'] },
      { action: 'merge', subject: 'individual' },
      { action: 'review', subject: 'evidence' },
    );
  if (who.roles.includes('administrator'))
    rules.push(
      { action: 'change', subject: ['club', 'keeper'] },
      { action: ['read', 'add', 'change'], subject: ['link', 'signing-key'] },
      { action: 'read', subject: 'metrics' },
    );
  return rules;
}

/** Whether somebody may do something to records of a kind at all, or to one record in particular. */
export function may(rules: PermissionRule[], action: Action, kind: Subject, record?: Owned): boolean {
  const ability = createMongoAbility<ClubAbility>(rules);
  return ability.can(action, record === undefined ? kind : subject(kind, { keeperId: record.keeperId }));
}

/** 403: the keeper who acts may not do this. */
export class ForbiddenProblem extends Problem {
  constructor(detail: string, errors?: readonly ProblemError[]) {
    super('forbidden', 403, say`Not yours to do`, detail, errors);
  }
}

/** Whether the acting keeper may do something to a record. */
export function isAllowedTo(action: Action, kind: Subject, record: Owned): boolean {
  return may(permissionsOf(viewer(), { publicReading: false }), action, kind, record);
}

/** Refuses with 403 (a stranger: 401) what the acting keeper may not do to a record. */
export function authorize(action: Action, kind: Subject, record: Owned): void {
  if (isAllowedTo(action, kind, record)) return;
  if (viewer() === null) throw new SignInProblem();
  throw new ForbiddenProblem(
    say`This record belongs to another keeper. Ask its keeper or a registrar to change it; you can add a remark of your own.`,
  );
}
