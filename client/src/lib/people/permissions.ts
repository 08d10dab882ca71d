import { createMongoAbility, subject, type MongoAbility, type RawRuleOf } from '@casl/ability';

/** What can be done, in the words of the service's permission table. */
export type Action = 'read' | 'ask' | 'add' | 'change' | 'merge' | 'review';

/** A record as far as a permission looks at it. */
interface Owned {
  readonly keeperId?: string | null | undefined;
}

type ClubAbility = MongoAbility<[Action, string | (Owned & { readonly __caslSubjectType__?: string })]>;
export type PermissionRule = RawRuleOf<ClubAbility>;

/** The rules that the service handed over, ready to be asked. */
export class Permissions {
  readonly #ability: ClubAbility;

  constructor(rules: readonly PermissionRule[]) {
    this.#ability = createMongoAbility<ClubAbility>([...rules]);
  }

  /** Whether something may be done to records of a kind at all, or to one record in particular. */
  may(action: Action, kind: string, record?: Owned): boolean {
    if (record === undefined) return this.#ability.can(action, kind);
    return this.#ability.can(action, subject(kind, { keeperId: record.keeperId ?? null }));
  }
}
