import { kept } from '../ui/kept.ts';
import { labelParts, type LabelPart } from './label-fit.ts';
import {
  commonPapers,
  labelsOnPage,
  paperLimits,
  paperProblems,
  type LabelPaper,
  type PaperField,
} from './label-paper.ts';

const key = 'linekeeper.labels';
const fields = Object.keys(paperLimits) as PaperField[];

/** What labels are printed on and what stands on them; kept on this device, since it belongs to the printer beside it. */
export class LabelChoice {
  kind = $state<LabelPaper['kind']>('a4');
  /** Measures as they are typed. */
  typed = $state<Record<PaperField, string>>({ ...typedOf(firstPaper) });
  copies = $state('1');
  used = $state('0');
  parts = $state<Record<LabelPart, boolean>>({ code: true, line: true, hatched: true, species: true, keeper: false });

  readonly paper = $derived<LabelPaper>({ kind: this.kind, ...measuresOf(this.typed) });
  readonly errors = $derived<Partial<Record<PaperField | 'copies' | 'used', string>>>({
    ...paperProblems(this.paper),
    ...(isCount(this.copies, 1, 50) ? {} : { copies: 'Write a whole number from 1 to 50.' }),
    ...(this.kind === 'single' || isCount(this.used, 0, this.#most() - 1)
      ? {}
      : { used: `Write a whole number from 0 to ${this.#most() - 1}.` }),
  });
  readonly isWrong = $derived(Object.keys(this.errors).length > 0);
  /** Which of the common sizes these are; empty where somebody has changed a measure. */
  readonly common = $derived(commonPapers.find(({ paper }) => isSame(paper, this.paper))?.name ?? '');

  constructor() {
    this.#take(kept.get(key));
  }

  take(name: string): void {
    const found = commonPapers.find((common) => common.name === name);
    if (!found) return;
    this.kind = found.paper.kind;
    this.typed = typedOf(found.paper);
    this.used = '0';
  }

  keep(): void {
    kept.set(key, JSON.stringify({ kind: this.kind, typed: this.typed, parts: this.parts }));
  }

  #most(): number {
    return Math.max(1, Math.floor(labelsOnPage(this.paper)) || 1);
  }

  /** Takes what was kept as far as it is what we would have kept. */
  #take(text: string | null): void {
    let found: unknown;
    try {
      found = JSON.parse(text ?? 'null');
    } catch {
      return;
    }
    if (typeof found !== 'object' || found === null) return;
    const { kind, typed, parts } = found as Record<string, unknown>;
    if (kind === 'a4' || kind === 'letter' || kind === 'single') this.kind = kind;
    for (const field of fields) {
      const value = (typed as Record<string, unknown> | undefined)?.[field];
      if (typeof value === 'string') this.typed[field] = value.slice(0, 10);
    }
    for (const part of labelParts) {
      const value = (parts as Record<string, unknown> | undefined)?.[part];
      if (typeof value === 'boolean') this.parts[part] = value;
    }
  }
}

const firstPaper = commonPapers[0]?.paper as LabelPaper; // the list is written down with its first entry

function typedOf(paper: LabelPaper): Record<PaperField, string> {
  return Object.fromEntries(fields.map((field) => [field, String(paper[field])])) as Record<PaperField, string>;
}

/** A comma does for a point, as on half the keyboards of Europe. */
function measuresOf(typed: Record<PaperField, string>): Record<PaperField, number> {
  const measure = (text: string): number => (text.trim() === '' ? NaN : Number(text.replace(',', '.')));
  return Object.fromEntries(fields.map((field) => [field, measure(typed[field])])) as Record<PaperField, number>;
}

function isCount(text: string, least: number, most: number): boolean {
  return /^\d{1,4}$/.test(text.trim()) && Number(text) >= least && Number(text) <= most;
}

function isSame(one: LabelPaper, other: LabelPaper): boolean {
  return one.kind === other.kind && fields.every((field) => one[field] === other[field]);
}
