import { flagSeverities, type FlagCode, type FlagSeverity, type LabelKind } from '../../../shared/vocabulary.ts';
import { Paper, type Column, type PaperSize } from '../../platform/pdf/paper.ts';
import { percent } from '../../provenance/flag-words.ts';
import { animalName, counted, grouped } from './audit-paper-words.ts';
import { writeYears } from './audit-paper-years.ts';
import type { LineAuditView } from './line-audit.view.ts';

/** What an audit on paper is made of. */
export interface AuditPaper {
  readonly audit: LineAuditView;
  /** Name of the club; null before it has one. */
  readonly club: string | null;
  /** When it is made, RFC 3339. */
  readonly made: string;
  readonly size: PaperSize;
}

/** How many things a list on paper names; the rest is counted. */
const most = { keepers: 20, causes: 12, outside: 30, gaps: 20, outrunning: 40, removal: 40, questions: 25 } as const;

const kinds: Readonly<Record<LabelKind, string>> = {
  locality: 'The name is a place.',
  'trade-name': 'The name is a trade name.',
  cross: 'The name says that it is a cross.',
  unlabelled: 'The name claims nothing.',
};

const severities: Readonly<Record<FlagSeverity, string>> = {
  breaks: 'breaks the label',
  weakens: 'weakens the label',
  'worth-knowing': 'worth knowing',
};

const flagNames: Readonly<Record<FlagCode, string>> = {
  'disputed-claim': 'Disputed claim',
  'mixed-labels': 'Mixed labels',
  'outside-line': 'Outside line',
  'label-changed': 'Label changed',
  'label-beyond-evidence': 'Beyond papers',
  'outside-range': 'Outside range',
  'export-route': 'Export route',
  'date-conflict': 'Dates conflict',
  'origin-gap': 'Unknown origin',
  'country-only': 'Country only',
  'parents-uncertain': 'Parents uncertain',
};

/** The audit of a line as a PDF: what its page says, in the same words, with bounded lists. */
export async function auditPaper({ audit, club, made, size }: AuditPaper): Promise<Uint8Array> {
  const title = `Audit of ${audit.line.name}`;
  const paper = new Paper(title, new Date(made), size);
  const { revision, at } = audit.asOf;
  const state = `revision ${revision} of the register, ${momentOf(at)}`;
  paper.title(title);
  paper.text([club, audit.line.species, kinds[audit.line.labelKind]].filter((part) => part !== null).join(' · '));
  paper.remark(`Made ${momentOf(made)} from ${state}.`);
  writeMembers(paper, audit);
  if (audit.members.all > 0) {
    writeFlags(paper, audit);
    writeYears(paper, audit);
    writeOutside(paper, audit);
    writeGaps(paper, audit);
    writeOutrunning(paper, audit);
    writeRemoval(paper, audit);
    writeQuestions(paper, audit);
  }
  paper.heading('Keep in mind');
  paper.list([
    ...audit.cautions,
    'A coefficient from a pedigree counts only what the pedigree knows.',
    'Figures advise; the keeper decides, with an eye to the animals’ welfare. An animal left out of breeding is still an animal to be kept well, and never one to be released.',
    'This is no permit and decides none: for trade, moving animals and disease ask the local authority or a veterinarian.',
  ]);
  return paper.finish([club, title, `revision ${revision}`].filter((part) => part !== null).join(' · '));
}

function writeMembers(paper: Paper, { members, traced, standings }: LineAuditView): void {
  paper.heading('Members');
  paper.text(`${grouped(members.living)} living of ${counted(members.all, 'member')}.`);
  if (traced.expected !== null)
    paper.text(
      `Papers carry ${percent(traced.expected)} of what lives today${
        traced.least !== null && traced.expected - traced.least > 0.0005
          ? `, and at least ${percent(traced.least)}`
          : ''
      }.`,
    );
  if (standings.length > 0)
    paper.text(
      `By how well the label of their founders stands: ${standings
        .map(({ standing, share }) => `${percent(share)} ${standing}`)
        .join(' · ')}.`,
    );
  if (members.byKeeper.length === 0) return;
  const shown = members.byKeeper.slice(0, most.keepers);
  paper.table(
    [{ head: 'keeper', width: 0.6 }, number('living', 0.2), number('members', 0.2)],
    shown.map(({ keeper, living, members: all }) => [keeper ?? 'not told', grouped(living), grouped(all)]),
  );
  more(paper, members.byKeeper.length - shown.length, 'keeper', '');
}

function writeFlags(paper: Paper, { flags }: LineAuditView): void {
  paper.heading('Flags');
  if (flags.length === 0) {
    paper.text('Nothing is held against the label by what the register knows.');
    return;
  }
  const columns: Column[] = [
    { head: 'flag', width: 0.16 },
    number('living', 0.09),
    number('members', 0.1),
    { head: 'because of', width: 0.33 },
    { head: 'cleared by', width: 0.32 },
  ];
  const rows = flagSeverities.flatMap((severity) => {
    const graded = flags.filter((flag) => flag.severity === severity);
    return graded.length === 0 ? [] : [severities[severity], ...graded.map(flagRow)];
  });
  paper.table(columns, rows);
}

function flagRow(flag: LineAuditView['flags'][number]): string[] {
  const causes = flag.causes.slice(0, most.causes).map(({ name }) => name);
  const left = flag.causeCount - causes.length;
  const because = `${causes.join(', ')}${left > 0 ? ` and ${grouped(left)} more` : ''}`;
  const cleared = [flag.clearedBy, ...acknowledgedWords(flag)].join(' ');
  return [flagNames[flag.code], grouped(flag.living), grouped(flag.members), because, cleared];
}

/** What a registrar said to a flag, of the line and of single members. */
function acknowledgedWords({ acknowledged, membersAcknowledged }: LineAuditView['flags'][number]): string[] {
  const said = acknowledged
    ? [
        `Acknowledged by ${acknowledged.by ?? 'a registrar'} on ${acknowledged.at.slice(0, 10)}${acknowledged.reason === null ? '.' : `: “${acknowledged.reason}”`}`,
      ]
    : [];
  if (acknowledged?.otherCauses) said.push('Since then another record causes it too, of which this was not said.');
  return membersAcknowledged > 0 ? [...said, `Acknowledged of ${counted(membersAcknowledged, 'member')}.`] : said;
}

function writeOutside(paper: Paper, { outsideBlood }: LineAuditView): void {
  paper.heading('Blood from outside the line');
  if (outsideBlood.length === 0) {
    paper.text('None is recorded.');
    return;
  }
  const shown = outsideBlood.slice(0, most.outside);
  paper.table(
    [
      { head: 'through', width: 0.3 },
      { head: 'of the line', width: 0.3 },
      number('since', 0.1),
      number('part of the living', 0.15),
      number('living with it', 0.15),
    ],
    shown.map(({ through, line, since, share, living }) => [
      animalName(through),
      line ?? 'not told',
      since === null ? '' : String(since),
      percent(share),
      grouped(living),
    ]),
  );
  more(paper, outsideBlood.length - shown.length, 'animal', ', each of them with a smaller part');
}

function writeGaps(paper: Paper, { gaps }: LineAuditView): void {
  paper.heading('Gaps');
  if (gaps.count === 0) {
    paper.text('Every founder has an origin, and every parent is recorded.');
    return;
  }
  paper.text(
    `${percent(gaps.share)} of what lives today comes from ${counted(gaps.count, 'ancestor')} of unknown origin or never recorded.`,
  );
  const shown = gaps.items.slice(0, most.gaps);
  paper.list(
    shown.map(
      ({ kind, name, share, living }) =>
        `${kind === 'clutch' ? `An unknown parent of the ${name}` : name}: ${percent(share)}, in ${counted(living, 'living animal')}`,
    ),
  );
  more(paper, gaps.count - shown.length, 'gap', '');
}

function writeOutrunning(paper: Paper, { traced, members }: LineAuditView): void {
  paper.heading('Labels that say more than their papers');
  if (traced.outrunning === 0) {
    paper.text('None among the living.');
    return;
  }
  paper.text(
    `${grouped(traced.outrunning)} of ${counted(members.living, 'living animal')}. Those with the least behind them, with the part that papers carry:`,
  );
  const shown = traced.items.slice(0, most.outrunning);
  paper.text(namesInRow(shown.map(({ animal, traced: part }) => `${animalName(animal)} ${percent(part)}`)));
  more(paper, traced.outrunning - shown.length, 'animal', '; the CSV has all');
}

function writeRemoval(paper: Paper, { removal }: LineAuditView): void {
  paper.heading('What would restore the line');
  if (removal.count === 0) {
    paper.text('No living member carries blood of another line or label.');
    return;
  }
  const { before, after } = removal;
  const part = (value: number | null): string => (value === null ? 'nothing' : percent(value));
  const genomes = (value: number | null): string => (value === null ? 'nothing' : value.toFixed(1));
  paper.text(
    `If ${counted(removal.count, 'living animal')} did not breed, the line would carry no foreign blood. Its gene diversity would go from ${part(before.geneDiversity)} to ${part(after.geneDiversity)}, and its founder genomes from ${genomes(before.founderGenomeEquivalents)} to ${genomes(after.founderGenomeEquivalents)}. With their part from other lines:`,
  );
  const shown = removal.animals.slice(0, most.removal);
  paper.text(namesInRow(shown.map(({ animal, outside }) => `${animalName(animal)} ${percent(outside)}`)));
  more(paper, removal.count - shown.length, 'animal', '; the CSV has all');
}

function writeQuestions(paper: Paper, { questions }: LineAuditView): void {
  paper.heading('What to find out first');
  if (questions.items.length === 0) {
    paper.text('No single answer would settle more of what lives today.');
    return;
  }
  const shown = questions.items.slice(0, most.questions);
  paper.table(
    [{ head: 'question', width: 0.75 }, number('settles of the living genome', 0.25)],
    shown.map(({ question, settles }) => [question, percent(settles)]),
  );
  more(paper, questions.count - shown.length, 'question', ', which settle less');
  paper.remark('Each as if all others stayed open: the parts of several answers must not be added.');
}

/** Names one after the other, none of them broken over two lines. */
const namesInRow = (names: readonly string[]): string =>
  names.map((name) => name.replaceAll(' ', '\u00a0')).join(' · ');

function more(paper: Paper, count: number, noun: string, after: string): void {
  if (count > 0) paper.remark(`And ${counted(count, `more ${noun}`)}${after}.`);
}

const number = (head: string, width: number): Column => ({ head, width, isNumber: true });

/** A moment to the minute, in UTC. */
const momentOf = (at: string): string => `${at.slice(0, 10)}, ${at.slice(11, 16)} UTC`;
