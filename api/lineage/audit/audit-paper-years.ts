import type { Column, Paper } from '../../platform/pdf/paper.ts';
import { percent } from '../../provenance/flag-words.ts';
import { grouped, originName } from './audit-paper-words.ts';
import type { AuditGroupView, LineAuditView } from './line-audit.view.ts';

/** Columns that fit beside each other, and years that a table tells. */
const ORIGINS_MOST = 6;
const YEARS_MOST = 40;

/** Sources and their shares, then inbreeding and diversity, over the years. */
export function writeYears(paper: Paper, audit: LineAuditView): void {
  writeShares(paper, audit);
  writeDiversity(paper, audit);
}

function writeShares(paper: Paper, audit: LineAuditView): void {
  const { origins, originCount } = audit;
  paper.heading('Sources and their shares over the years');
  const named = origins.slice(0, ORIGINS_MOST);
  paper.list(
    named.map((origin, at) => `${letter(at)}: ${originName(origin)}, ${percent(origin.share)} of all members`),
  );
  if (originCount > named.length) paper.remark(`And ${grouped(originCount - named.length)} more, under “others”.`);
  const width = 0.86 / (named.length + 2);
  const columns: Column[] = [
    { head: 'lived at the end of', width: 0.14 },
    { head: 'animals', width, isNumber: true },
    ...named.map((_, at): Column => ({ head: letter(at), width, isNumber: true })),
    { head: 'others', width, isNumber: true },
  ];
  const row = (head: string, group: AuditGroupView): string[] => {
    const shares = named.map((_, at) => group.shares[at] ?? 0);
    const others = Math.max(0, 1 - shares.reduce((sum, share) => sum + share, 0));
    const told = group.animals === 0 ? [] : [...shares, others < 1e-9 ? 0 : others].map(percent);
    return [head, grouped(group.animals), ...told];
  };
  paper.table(columns, overYears(audit, row));
}

function writeDiversity(paper: Paper, audit: LineAuditView): void {
  paper.heading('Inbreeding, diversity and effective founders over the years');
  const columns: Column[] = [
    { head: 'lived at the end of', width: 0.2 },
    { head: 'animals', width: 0.12, isNumber: true },
    { head: 'mean inbreeding F', width: 0.17, isNumber: true },
    { head: 'gene diversity', width: 0.17, isNumber: true },
    { head: 'founder genomes', width: 0.17, isNumber: true },
    { head: 'effective founders', width: 0.17, isNumber: true },
  ];
  const row = (head: string, group: AuditGroupView): string[] => [
    head,
    grouped(group.animals),
    group.meanInbreeding === null ? '' : percent(group.meanInbreeding),
    group.geneDiversity === null ? '' : percent(group.geneDiversity),
    group.founderGenomeEquivalents?.toFixed(1) ?? '',
    group.effectiveFounders?.toFixed(1) ?? '',
  ];
  paper.table(columns, overYears(audit, row));
  paper.remark('F after Wright (1922); gene diversity, founder genomes and effective founders after Lacy (1989).');
}

/** A row for each of the latest years, then one for today. */
function overYears({ years, now }: LineAuditView, row: (head: string, group: AuditGroupView) => string[]): string[][] {
  const latest = years.slice(-YEARS_MOST);
  return [...latest.map(({ year, standing }) => row(String(year), standing)), row('today', now)];
}

const letter = (at: number): string => String.fromCharCode(65 + at);
