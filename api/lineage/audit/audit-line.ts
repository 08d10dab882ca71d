import { flagCodes, standings, type FlagCode, type Standing } from '../../../shared/vocabulary.ts';
import { claimFlagCodes } from '../../provenance/claim-causes.ts';
import { collectAncestry, type Ancestry } from '../kernel/ancestry.ts';
import { founderContributions } from '../kernel/founders.ts';
import { genePool, type GenePool } from '../kernel/gene-pool.ts';
import type { FounderShare } from '../kernel/shares.ts';
import type { AuditInput } from './audit-input.ts';
import { auditYears, measureGroup, type AuditedGroup, type AuditedYears } from './audit-years.ts';
import { ClutchFindings, OTHER_LABEL, type Finding } from './clutch-findings.ts';
import { causesOf, poolOrigins, type PoolOrigins } from './flag-causes.ts';
import { bitOf, verdictOf } from './founder-verdicts.ts';
import { openQuestions, type OpenQuestion } from './open-questions.ts';
import {
  aboveCarriers,
  countTouched,
  FOLLOWED_MOST,
  groupMembers,
  type Cause,
  type MemberGroup,
  type Touched,
} from './touched-members.ts';

/** Most origins whose shares are told over the years. */
const ORIGINS_MOST = 24;
const QUESTIONS_MOST = 25;
/** Most animals that a list names. */
export const ANIMALS_MOST = 100;

/** A record that causes a flag. */
export type CauseOfFlag = Pick<Cause, 'kind' | 'number' | 'share'>;

/** A flag as members of the line carry it. */
export interface CarriedFlag {
  readonly code: FlagCode;
  readonly members: number;
  readonly living: number;
  readonly causes: readonly (CauseOfFlag & Touched)[];
  /** Records beyond these whose claims cause it: how grave it is depends on all. */
  readonly furtherClaims: readonly CauseOfFlag[];
  /** How many records cause it in all, and the part of the gene pool that came through all of them. */
  readonly causeCount: number;
  readonly causeShare: number;
}

/** A member with what holds of it. */
export interface AuditedMember extends Finding {
  readonly individual: number;
}

/** The living whose removal from breeding would leave none with foreign blood, and what that would cost. */
export interface Removal {
  /** Some of them, those with the most foreign blood first. */
  readonly animals: readonly AuditedMember[];
  readonly count: number;
  readonly before: AuditedGroup;
  readonly after: AuditedGroup;
}

/** Everything that the lineage says of a line, by dense numbers. */
export interface LineAudit {
  readonly members: number;
  readonly living: number;
  readonly flags: readonly CarriedFlag[];
  readonly standings: readonly { readonly standing: Standing; readonly share: number }[];
  /** Origins of the gene pool of all members, the largest first. */
  readonly origins: readonly FounderShare[];
  readonly originCount: number;
  readonly all: AuditedGroup;
  readonly now: AuditedGroup;
  readonly years: AuditedYears;
  readonly removal: Removal;
  readonly questions: readonly OpenQuestion[];
  readonly questionCount: number;
  /** Living members whose label says more than their evidence, those with the least traced part first. */
  readonly outrunning: readonly AuditedMember[];
  readonly traced: { readonly expected: number | null; readonly least: number | null };
  /** Members of which some flag is acknowledged. */
  readonly acknowledged: readonly AuditedMember[];
  /** Every member in the order of the input, where each was asked for. */
  readonly each: readonly AuditedMember[] | null;
}

/** Audits a line: some linear passes over the ancestry of its members, and two for each year. */
export function auditLine(input: AuditInput): LineAudit {
  const { members, pedigree, inbreeding } = input;
  const ancestry = collectAncestry(pedigree, inbreeding.order, members);
  const findings = new ClutchFindings(input, ancestry);
  const groups = groupMembers(input, findings);
  const alive = members.filter((_, place) => input.living[place] === 1);
  const isAnyAlive = alive.length > 0;
  const pool = genePool(pedigree, ancestry, isAnyAlive ? alive : members);
  const counted = isAnyAlive ? input.living : new Uint8Array(members.length).fill(1);
  const origins = poolOrigins(input, ancestry, findings, pool, counted);
  const begins = founderContributions(pedigree, ancestry, genePool(pedigree, ancestry, members)).sort(
    (one, other) => other.share - one.share,
  );
  const named = begins.slice(0, ORIGINS_MOST);
  const questions = isAnyAlive ? openQuestions(input, ancestry, origins) : [];
  const now = measureGroup(input, ancestry, alive, named);
  const found = (some: Int32Array): AuditedMember[] =>
    Array.from(some, (individual) => ({ individual, ...findings.of(individual) }));
  return {
    members: members.length,
    living: alive.length,
    flags: flagsOf(input, ancestry, findings, groups, origins),
    standings: isAnyAlive ? standingsOf(input, ancestry, pool) : [],
    origins: named,
    originCount: begins.length,
    all: measureGroup(input, ancestry, members, named),
    now,
    years: auditYears(input, ancestry, named),
    removal: removalOf(input, ancestry, findings, alive, now),
    questions: questions.slice(0, QUESTIONS_MOST),
    questionCount: questions.length,
    ...tracedOf(findings, alive),
    acknowledged: found(members.filter((member) => input.acknowledged.has(member))),
    each: input.isEach ? found(members) : null,
  };
}

function flagsOf(
  input: AuditInput,
  ancestry: Ancestry,
  findings: ClutchFindings,
  groups: readonly MemberGroup[],
  origins: PoolOrigins,
): CarriedFlag[] {
  return flagCodes.flatMap((code): CarriedFlag[] => {
    const bit = bitOf(code);
    const carriers = groups.filter(({ bits }) => (bits & bit) !== 0);
    if (carriers.length === 0) return [];
    const above = aboveCarriers(ancestry, groups, bit);
    const causes = causesOf(code, input, findings, origins, (founder) => above[ancestry.find(founder)] === 1);
    const followed = causes.slice(0, FOLLOWED_MOST);
    const isEnding = code === 'outside-line' || code === 'label-changed';
    const touched = countTouched(input, ancestry, findings, groups, bit, followed, isEnding);
    return [
      {
        code,
        members: carriers.reduce((sum, group) => sum + group.members, 0),
        living: carriers.reduce((sum, group) => sum + group.living, 0),
        causes: followed.flatMap((cause, place) => {
          const found = touched[place];
          return found ? [{ ...shownCause(cause), ...found }] : [];
        }),
        furtherClaims: isOfClaims(code) ? causes.slice(FOLLOWED_MOST).map(shownCause) : [],
        causeCount: causes.length,
        causeShare: Math.min(
          1,
          causes.reduce((sum, { share }) => sum + share, 0),
        ),
      },
    ];
  });
}

const isOfClaims = (code: FlagCode): boolean => claimFlagCodes.some((one) => one === code);

const shownCause = ({ kind, number, share }: Cause): CauseOfFlag => ({ kind, number, share });

/** Parts of a gene pool by the standing of the founders that they come from, best first; they sum to 1. */
function standingsOf(
  { pedigree, verdicts }: AuditInput,
  ancestry: Ancestry,
  pool: GenePool,
): { standing: Standing; share: number }[] {
  const unknown = standings.indexOf('unknown');
  const shares = new Float64Array(standings.length);
  const add = (standing: number, share: number): void => {
    shares[standing] = (shares[standing] as number) + share;
  };
  for (let founder = 0; founder < ancestry.founders; founder++) {
    const row = verdictOf(verdicts, pedigree, ancestry.animals[founder] as number);
    add(row < 0 ? unknown : (verdicts.standings[row] as number), pool.through[founder] as number);
  }
  for (let clutch = 0; clutch < ancestry.clutches.length; clutch++)
    add(unknown, (pool.unknownFirst[clutch] as number) + (pool.unknownSecond[clutch] as number));
  return standings.flatMap((standing, of) => {
    const share = shares[of] ?? 0;
    return share > 0 ? [{ standing, share }] : [];
  });
}

/**
 * Foreign is blood of other lines, and of founders that carry another label, also where they all carry the same one. Under a cross it is no
 * fault: nothing is to be restored. A name that claims nothing is broken by several labels only.
 */
function removalOf(
  input: AuditInput,
  ancestry: Ancestry,
  findings: ClutchFindings,
  alive: Int32Array,
  before: AuditedGroup,
): Removal {
  const otherLabels = input.labelKind === 'unlabelled' ? bitOf('mixed-labels') : OTHER_LABEL;
  const foreign = input.labelKind === 'cross' ? 0 : bitOf('outside-line') | otherLabels;
  const kept: number[] = [];
  const gone: AuditedMember[] = [];
  for (const individual of alive) {
    const finding = findings.of(individual);
    if ((finding.bits & foreign) === 0) kept.push(individual);
    else gone.push({ individual, ...finding });
  }
  const after = gone.length === 0 ? before : measureGroup(input, ancestry, Int32Array.from(kept), []);
  gone.sort((one, other) => other.outside - one.outside || one.individual - other.individual);
  return { animals: gone.slice(0, ANIMALS_MOST), count: gone.length, before, after };
}

function tracedOf(findings: ClutchFindings, alive: Int32Array): Pick<LineAudit, 'outrunning' | 'traced'> {
  if (alive.length === 0) return { outrunning: [], traced: { expected: null, least: null } };
  const beyond = bitOf('label-beyond-evidence');
  const short: AuditedMember[] = [];
  let [expected, least] = [0, 0];
  for (const individual of alive) {
    const finding = findings.of(individual);
    expected += finding.traced / alive.length;
    least += finding.least / alive.length;
    if ((finding.bits & beyond) !== 0) short.push({ individual, ...finding });
  }
  short.sort((one, other) => one.least - other.least || one.traced - other.traced || one.individual - other.individual);
  return {
    outrunning: short.slice(0, ANIMALS_MOST),
    traced: { expected: Math.min(1, expected), least: Math.min(1, least) },
  };
}
