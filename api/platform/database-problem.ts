import { constraintMessages } from './constraints.ts';
import { ConflictProblem, InvalidProblem, Problem } from './problem.ts';
import { say } from './say.ts';

interface DatabaseError {
  readonly code: string;
  readonly constraint?: string;
}

/**
 * The problem that an error of PostgreSQL stands for, or null where it is a fault of ours. The rules that the database holds
 * are told in words by `constraints.ts`.
 */
export function databaseProblem(thrown: unknown): Problem | null {
  const error = databaseErrorOf(thrown);
  if (!error) return null;
  const rule = error.constraint === undefined ? undefined : constraintMessages[error.constraint];
  switch (error.code) {
    case '23505':
    case '23P01':
      return new ConflictProblem(rule?.detail ?? say`Another record already stands in its place.`, {}, rule && [rule]);
    case '23514':
    case '23502':
      return new InvalidProblem(rule?.detail ?? say`A rule of the register stands against it.`, rule ? [rule] : []);
    case '23503':
      return new InvalidProblem(
        rule?.detail ?? say`It names a record that does not exist, or that others still need.`,
        rule ? [rule] : [],
      );
    case '22P02':
    case '22021':
    case '22P05':
    case '22003':
    case '22007':
    case '22008':
      return new InvalidProblem(say`A value has a form or a size that the register cannot hold.`, []);
    case '40001':
    case '40P01':
    case '55P03':
      return new Problem(
        'conflict',
        409,
        say`Two at once`,
        say`Somebody wrote to the same records at the same moment. Try again.`,
      );
    case '57014':
      return new Problem(
        'too-large',
        422,
        say`Too much work`,
        say`That took longer than one request may take. Ask for less.`,
      );
    default:
      return /^(08|53|57P)/.test(error.code)
        ? new Problem('unavailable', 503, say`Not now`, say`The database does not answer. Try again shortly.`)
        : null;
  }
}

function databaseErrorOf(thrown: unknown): DatabaseError | null {
  if (typeof thrown !== 'object' || thrown === null) return null;
  // TypeORM wraps the driver's error; both carry the code, only the inner one the constraint
  const inner: unknown = 'driverError' in thrown ? thrown.driverError : thrown;
  if (typeof inner !== 'object' || inner === null || !('code' in inner) || typeof inner.code !== 'string') return null;
  if (['ECONNREFUSED', 'ECONNRESET', 'EPIPE'].includes(inner.code)) return { code: '08006' };
  if (!/^[0-9A-Z]{5}$/.test(inner.code)) return null;
  return 'constraint' in inner && typeof inner.constraint === 'string'
    ? { code: inner.code, constraint: inner.constraint }
    : { code: inner.code };
}
