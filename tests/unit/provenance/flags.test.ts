import { describe, expect, it } from 'vitest';
import { auditLabel, FLAG_RECORDS_MOST, type Flag } from '../../../api/provenance/flags.ts';
import type { LabelFindings, SharedRecord } from '../../../api/provenance/label-findings.ts';
import type { FlagCode } from '../../../shared/vocabulary.ts';

/** Findings of an animal against which nothing can be held. */
const clean: LabelFindings = {
  label: { name: 'Quebrada Honda', kind: 'locality' },
  tracedShare: { expected: 1, least: 1 },
  untraced: [],
  labelCount: 1,
  founderLabels: [{ label: 'Quebrada Honda', share: 1, sources: [record('source', 'Import, 1994', 1)] }],
  gaps: [],
  outsiders: [],
  crossedLines: [],
  uncertainClutches: [],
  isProposalUncertain: false,
  claimants: [],
  relabelled: [],
  nativeRange: ['EC'],
};

function record(kind: SharedRecord['kind'], name: string, share: number): SharedRecord {
  return { kind, id: `id of ${name}`, name, share, isPrivate: false };
}

function flagOf(findings: Partial<LabelFindings>, code: FlagCode): Flag {
  const flag = auditLabel({ ...clean, ...findings }).find((other) => other.code === code);
  if (!flag) throw new Error(`no flag ${code}`);
  return flag;
}

const codes = (findings: Partial<LabelFindings>): FlagCode[] =>
  auditLabel({ ...clean, ...findings }).map(({ code }) => code);

describe('the audit of a label', () => {
  it('has nothing to say about a label that is traced whole', () => {
    expect(auditLabel(clean)).toEqual([]);
  });

  it('forgives the rounding of many halves', () => {
    expect(codes({ tracedShare: { expected: 1 - 1e-13, least: 1 - 1e-13 } })).toEqual([]);
  });

  it('says that a place name outruns its evidence, by how much, and whose papers are missing', () => {
    const untraced = [record('source', 'Purchase, 2012', 0.375)];
    const flag = flagOf({ tracedShare: { expected: 0.625, least: 0.5 }, untraced }, 'label-beyond-evidence');
    expect(flag.severity).toBe('weakens');
    expect(flag.detail).toContain('62.5 %');
    expect(flag.detail).toContain('50 %');
    expect(flag.records).toEqual([
      { kind: 'source', id: 'id of Purchase, 2012', name: 'Purchase, 2012', isPrivate: false },
    ]);
    expect(flag.clearedBy).toContain('Purchase, 2012');
  });

  it('holds a possible gap against a place name even where the expected share is whole', () => {
    expect(codes({ tracedShare: { expected: 1, least: 0.75 } })).toEqual(['label-beyond-evidence']);
  });

  it.each(['trade-name', 'cross', 'unlabelled'] as const)('does not ask a %s for papers of a place', (kind) => {
    expect(codes({ label: { name: 'Sunset', kind }, tracedShare: { expected: 0, least: 0 } })).toEqual([]);
  });

  it('says that founders came in under different labels, with the share of each', () => {
    const founderLabels = [
      { label: 'Quebrada Honda', share: 0.75, sources: [record('source', 'Import, 1994', 0.75)] },
      { label: 'Río Verde', share: 0.25, sources: [record('source', 'Purchase, 2012', 0.25)] },
    ];
    const flag = flagOf({ labelCount: founderLabels.length, founderLabels }, 'mixed-labels');
    expect(flag.severity).toBe('breaks');
    expect(flag.detail).toContain('“Quebrada Honda” 75 %, “Río Verde” 25 %');
    expect(flag.records.map(({ name }) => name)).toEqual(['Import, 1994', 'Purchase, 2012']);
  });

  it('names the ancestors of another line, their line and their share', () => {
    const outsiders = [{ ...record('individual', 'EA-07 (1007-1)', 0.125), line: 'Río Verde' }];
    const flag = flagOf({ outsiders }, 'outside-line');
    expect(flag.severity).toBe('breaks');
    expect(flag.detail).toMatch(/12\.5 %.*1 ancestor .*Río Verde/);
    expect(flag.clearedBy).toContain('EA-07 (1007-1)');
  });

  it('finds other lines and labels no more than worth knowing in a line that says it is a cross', () => {
    const flags = auditLabel({
      ...clean,
      label: { name: 'Honda × Verde', kind: 'cross' },
      labelCount: 2,
      founderLabels: [...clean.founderLabels, { label: 'Río Verde', share: 0.5, sources: [] }],
      outsiders: [{ ...record('individual', 'EA-07', 0.5), line: 'Río Verde' }],
    });
    expect(flags.map(({ code, severity }) => [code, severity])).toEqual([
      ['mixed-labels', 'worth-knowing'],
      ['outside-line', 'worth-knowing'],
    ]);
  });

  it('says of proposed parents of two lines that their young belong to neither', () => {
    const outsiders = [{ ...record('individual', 'EA-07', 0.5), line: 'Río Verde' }];
    const flag = flagOf({ label: null, crossedLines: ['Quebrada Honda', 'Río Verde'], outsiders }, 'outside-line');
    expect(flag.detail).toContain('Quebrada Honda, Río Verde');
  });

  it('names the places where the origin is unknown and how much goes back to them', () => {
    const gaps = [
      record('individual', 'BA-07', 0.25),
      record('clutch', 'an unknown parent of the clutch of 2014', 0.25),
    ];
    const flag = flagOf({ gaps }, 'origin-gap');
    expect(flag.severity).toBe('weakens');
    expect(flag.detail).toContain('50 %');
    expect(flag.records.map(({ kind }) => kind)).toEqual(['individual', 'clutch']);
    expect(flag.clearedBy).toContain('BA-07');
  });

  it('finds candidate parents worth knowing, no more', () => {
    const uncertainClutches = [record('clutch', 'clutch of 2021-04-12', 0)];
    const flag = flagOf({ uncertainClutches }, 'parents-uncertain');
    expect(flag.severity).toBe('worth-knowing');
    expect(flag.detail).toContain('clutch of 2021-04-12');
    expect(codes({ isProposalUncertain: true })).toEqual(['parents-uncertain']);
  });

  it('never rounds a share away: a trace is not 0 %, nearly all is not 100 %', () => {
    expect(flagOf({ gaps: [record('individual', 'BA-07', 1e-6)] }, 'origin-gap').detail).toContain('less than 0.1 %');
    expect(flagOf({ gaps: [record('individual', 'BA-07', 0.99999)] }, 'origin-gap').detail).toContain(
      'more than 99.9 %',
    );
  });

  it('names no more records than a reader can use, the largest first, and each once', () => {
    const gaps = Array.from({ length: 80 }, (_, place) => record('individual', `A-${place}`, 1 / 80));
    const flag = flagOf({ gaps: [...gaps, ...gaps.slice(0, 1)] }, 'origin-gap');
    expect(flag.records).toHaveLength(FLAG_RECORDS_MOST);
    expect(flag.records[0]?.name).toBe('A-0');
    expect(new Set(flag.records.map(({ id }) => id)).size).toBe(FLAG_RECORDS_MOST);
    expect(flag.detail).toContain('and 77 more');
  });

  it('tells the gravest first', () => {
    const everything = codes({
      tracedShare: { expected: 0, least: 0 },
      labelCount: 2,
      founderLabels: [...clean.founderLabels, { label: 'Other', share: 0.1, sources: [] }],
      outsiders: [{ ...record('individual', 'X', 0.1), line: 'Y' }],
      gaps: [record('individual', 'Z', 0.1)],
      uncertainClutches: [record('clutch', 'C', 0)],
    });
    expect(everything).toEqual([
      'mixed-labels',
      'outside-line',
      'label-beyond-evidence',
      'origin-gap',
      'parents-uncertain',
    ]);
  });
});
