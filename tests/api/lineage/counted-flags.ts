import { expect } from 'vitest';
import type { LineAuditView } from '../../../api/lineage/audit/line-audit.view.ts';
import type { LineageView } from '../../../api/lineage/lineage.view.ts';
import { flagSeverities, type FlagCode, type FlagSeverity } from '../../../shared/vocabulary.ts';
import { bodyOf } from '../../support/answer.ts';
import type { TestApi } from '../../support/api.ts';
import type { RegisterSketch, SketchIds } from '../../support/register-sketch.ts';

/** A flag as it is counted: its members, the living among them, how grave, and how many members name each record. */
interface Counted {
  members: number;
  living: number;
  severity: FlagSeverity;
  readonly causes: Record<string, number>;
}
export type CountedFlags = Partial<Record<FlagCode, Counted>>;

/** The flags of the members of a line by the view of each one. */
export async function byAnimals(
  api: TestApi,
  sketch: RegisterSketch,
  ids: SketchIds,
  line: number,
): Promise<CountedFlags> {
  const counted: CountedFlags = {};
  const members = [...sketch.individuals.entries()].filter(([, animal]) => animal.line === line);
  const answers = await Promise.all(
    members.map(([place]) => api.http.get(`/api/v1/individuals/${ids.individuals[place]}/lineage`).expect(200)),
  );
  for (const [at, answer] of answers.entries()) {
    const isLiving = (members[at]?.[1].status ?? 'alive') === 'alive';
    for (const { code, severity, records } of bodyOf<LineageView>(answer).label.flags) {
      const flag = (counted[code] ??= { members: 0, living: 0, severity, causes: {} });
      flag.members++;
      if (isLiving) flag.living++;
      if (flagSeverities.indexOf(severity) < flagSeverities.indexOf(flag.severity)) flag.severity = severity;
      for (const { id } of records) flag.causes[id] = (flag.causes[id] ?? 0) + 1;
    }
  }
  return counted;
}

/** The same as the audit of the line has it. */
export async function byAudit(api: TestApi, line: string): Promise<CountedFlags> {
  await api.dataSource.query('delete from rate_limit');
  const { flags } = bodyOf<LineAuditView>(await api.http.get(`/api/v1/lines/${line}/audit`).expect(200));
  return Object.fromEntries(
    flags.map(({ code, members, living, severity, causes, causeCount, clearedBy }) => {
      expect(causeCount).toBe(causes.length);
      expect(clearedBy).not.toContain('See the flags');
      const touched = causes.map((cause): [string, number] => [cause.id, cause.members]);
      return [code, { members, living, severity, causes: Object.fromEntries(touched) }];
    }),
  );
}

let serial = 0;

/** Labels of one register. */
export interface RegisterLabels {
  readonly own: string;
  readonly other: string;
  readonly third: string;
  readonly sameAsOwn: string;
}

/** Others each time, since lines of one species have a name each. */
export function newLabels(): RegisterLabels {
  const run = ++serial;
  return { own: `Rio Uno ${run}`, other: `Rio Dos ${run}`, third: `Rio Tres ${run}`, sameAsOwn: `rio  uno ${run}` };
}
