/** What can be done, in the words of the service's permission table. */
export type Action = 'read' | 'ask' | 'add' | 'change' | 'merge' | 'review';

/** A record as far as a permission looks at it. */
interface Owned {
  readonly keeperId?: string | null | undefined;
}

/** A rule that the service handed over: what may be done, to which kinds of record, and whether to those of one keeper alone. */
export interface PermissionRule {
  readonly action: readonly string[];
  readonly subject: readonly string[];
  readonly conditions?: { readonly keeperId: string };
}

/** The rules that the service handed over, ready to be asked. What is in no rule may not be done. */
export class Permissions {
  readonly #rules: readonly PermissionRule[];

  constructor(rules: readonly PermissionRule[]) {
    this.#rules = rules;
  }

  /** Whether something may be done to records of a kind at all, or to one record in particular. */
  may(action: Action, kind: string, record?: Owned): boolean {
    return this.#rules.some(
      (rule) =>
        rule.action.includes(action) &&
        rule.subject.includes(kind) &&
        (record === undefined || rule.conditions === undefined || rule.conditions.keeperId === record.keeperId),
    );
  }
}
