import { flagCodes, flagSeverities } from '../../../shared/vocabulary.ts';
import type { KnownFlags } from '../../provenance/acknowledgements/known-flags.ts';
import type { LineView } from '../../register/lines/line.view.ts';
import { FounderStandings } from '../founder-standings.ts';
import type { LabelFacts } from '../label-facts.queries.ts';
import type { LineageSnapshot } from '../lineage-snapshot.ts';
import { originView, wantOrigins } from '../origin-views.ts';
import { recordIdIn, WantedNames, type NamedKind, type RecordNames } from '../record-names.ts';
import { auditCautions } from './audit-cautions.ts';
import type { AuditedMember, CarriedFlag, LineAudit } from './audit-line.ts';
import type { AuditedGroup } from './audit-years.ts';
import type { KeeperCount } from './audited-members.queries.ts';
import { bitOf } from './founder-verdicts.ts';
import type {
  AuditGroupView,
  FlagCauseView,
  LineAuditView,
  LineFlagView,
  OpenQuestionView,
  OutsideBloodView,
} from './line-audit.view.ts';
import { flagWords, lineTold, recordOf, type FlagWords } from './line-findings.ts';
import type { OpenQuestion, QuestionKind } from './open-questions.ts';
import { say } from '../../platform/say.ts';

const recordOfQuestion: Readonly<Record<QuestionKind, NamedKind>> = {
  'undocumented-source': 'source',
  'unknown-origin': 'individual',
  'unknown-parent': 'clutch',
  'uncertain-clutch': 'clutch',
};

/** The records that an audit names. */
export function namesWanted(audit: LineAudit): WantedNames {
  const wanted = new WantedNames();
  const kinds = { individual: wanted.individuals, clutch: wanted.clutches, source: wanted.sources };
  wantOrigins(wanted, audit.origins);
  for (const { kind, number } of audit.flags.flatMap(({ causes }) => causes))
    if (kind !== 'line') kinds[kind].add(number);
  for (const { kind, number } of audit.questions) kinds[recordOfQuestion[kind]].add(number);
  for (const { individual } of [...audit.outrunning, ...audit.removal.animals]) wanted.individuals.add(individual);
  return wanted;
}

/** All that an answer is put together from. */
export interface AuditParts {
  readonly snapshot: LineageSnapshot;
  readonly line: LineView;
  readonly audit: LineAudit;
  readonly keepers: readonly KeeperCount[];
  readonly names: RecordNames;
  /** What flags ask of records besides claims. */
  readonly facts: LabelFacts;
  readonly known: KnownFlags;
}

/** The audit of a line as an answer shows it. */
export function auditView(parts: AuditParts): LineAuditView {
  const { snapshot, line, audit, keepers, names } = parts;
  const founders = new FounderStandings(snapshot.graph, { name: line.name, kind: line.labelKind });
  const words = flagWords(parts);
  const gaps = audit.flags.find(({ code }) => code === 'origin-gap');
  return {
    line: { id: line.id, name: line.name, species: line.species, labelKind: line.labelKind },
    members: { all: audit.members, living: audit.living, byKeeper: keepers.map((keeper) => ({ ...keeper })) },
    flags: audit.flags
      .map((flag) => ({ ...flagView(flag, words(flag), parts), ...acknowledgedView(flag, parts) }))
      .sort((one, other) => flagSeverities.indexOf(one.severity) - flagSeverities.indexOf(other.severity)),
    standings: [...audit.standings],
    origins: audit.origins.map((origin) => ({ ...originView(snapshot, founders, origin, names), share: origin.share })),
    originCount: audit.originCount,
    all: groupView(audit.all),
    now: groupView(audit.now),
    years: audit.years.years.map(({ year, young, standing }) => ({
      year,
      young: groupView(young),
      standing: groupView(standing),
    })),
    dated: audit.years.dated,
    untold: audit.years.untold,
    outsideBlood: outsideBlood(parts),
    gaps: {
      items: (gaps?.causes ?? []).map((cause) => causeView(cause, parts)),
      count: gaps?.causeCount ?? 0,
      share: gaps?.causeShare ?? 0,
    },
    traced: tracedView(parts),
    removal: removalView(parts),
    questions: {
      items: audit.questions.map((question) => questionView(question, line.name, names)),
      count: audit.questionCount,
    },
    cautions: auditCautions(audit),
    asOf: snapshot.asOf,
  };
}

type Acknowledged = 'acknowledged' | 'membersAcknowledged';

/** What is acknowledged of a flag: of the line, and of how many of its members. */
function acknowledgedView(flag: CarriedFlag, parts: AuditParts): Pick<LineFlagView, Acknowledged> {
  const { snapshot, line, audit, known } = parts;
  const { code, causes, causeCount } = flag;
  const ids = causes.map(({ kind, number }) => recordIdIn(snapshot.graph, kind, number));
  const isKnown = ({ individual, bits }: AuditedMember): boolean =>
    (bits & bitOf(code)) !== 0 && known.among(snapshot.idOf(individual), [code]).length > 0;
  return {
    acknowledged: known.of(line.id, code, { ids, count: causeCount }),
    membersAcknowledged: audit.acknowledged.filter(isKnown).length,
  };
}

function flagView(flag: CarriedFlag, words: FlagWords, parts: AuditParts): Omit<LineFlagView, Acknowledged> {
  const { audit } = parts;
  const living = say`${flag.living} of ${audit.living} living animals`;
  return {
    code: flag.code,
    severity: words.severity,
    detail: say`${living} carry it, and ${flag.members} of all ${audit.members} members.`,
    members: flag.members,
    living: flag.living,
    causes: flag.causes.map((cause) => causeView(cause, parts)),
    causeCount: flag.causeCount,
    clearedBy: words.clearedBy,
  };
}

function causeView(cause: CarriedFlag['causes'][number], { line, names }: AuditParts): FlagCauseView {
  const { share, members, living } = cause;
  return { ...recordOf(cause, line, names), members, living, share };
}

function outsideBlood({ snapshot, audit, names }: AuditParts): OutsideBloodView[] {
  const flag = audit.flags.find(({ code }) => code === 'outside-line');
  return (flag?.causes ?? []).map(({ number, since, share, members, living }) => ({
    through: names.refOf(number),
    line: lineTold(snapshot.graph, names, number),
    since,
    share,
    members,
    living,
  }));
}

function tracedView({ audit, names, known, snapshot }: AuditParts): LineAuditView['traced'] {
  const { traced, outrunning, flags } = audit;
  return {
    ...traced,
    outrunning: flags.find(({ code }) => code === 'label-beyond-evidence')?.living ?? 0,
    items: outrunning.map((member) => ({
      animal: names.refOf(member.individual),
      traced: member.traced,
      least: member.least,
      shortfall: 1 - member.least,
      isAcknowledged: known.among(snapshot.idOf(member.individual), ['label-beyond-evidence']).length > 0,
    })),
  };
}

function removalView({ audit: { removal }, names, known, snapshot }: AuditParts): LineAuditView['removal'] {
  const foreign = ['mixed-labels', 'outside-line', 'label-changed'] as const;
  return {
    count: removal.count,
    animals: removal.animals.map(({ individual, bits, outside }) => {
      const flags = foreign.filter((code) => (bits & bitOf(code)) !== 0);
      const acknowledged = known.among(snapshot.idOf(individual), flags);
      return { animal: names.refOf(individual), outside, flags, acknowledged };
    }),
    before: groupView(removal.before),
    after: groupView(removal.after),
  };
}

function questionView({ kind, number, settles }: OpenQuestion, label: string, names: RecordNames): OpenQuestionView {
  const record = names.record(recordOfQuestion[kind], number);
  const asked: Readonly<Record<QuestionKind, string>> = {
    'undocumented-source': say`Which papers name where ${record.name} came from, and is it ${label}?`,
    'unknown-origin': say`Where did ${record.name} come from?`,
    'unknown-parent': say`Who is the unknown parent of the ${record.name}?`,
    'uncertain-clutch': say`Which of the candidates are the parents of the ${record.name}?`,
  };
  return { kind, record, question: asked[kind], settles: Math.min(1, settles) };
}

function groupView(group: AuditedGroup): AuditGroupView {
  return { ...group, shares: [...group.shares] };
}

/** Every flag of a member, in the order of the vocabulary. */
export function codesOf(bits: number): (typeof flagCodes)[number][] {
  return flagCodes.filter((code) => (bits & bitOf(code)) !== 0);
}
