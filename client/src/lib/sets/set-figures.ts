import type { LineageSet } from '../api/types.ts';
import type { ExplainedFigure } from '../figures/explained-figures.ts';
import { counted, decimals, grouped, percent, percentRange } from '../ui/figures.ts';
import { word } from '../words/word.ts';

/** A figure of a set as the page prints it. */
export interface SetFigure {
  name: ExplainedFigure;
  words: string;
  /** Printed large; words where there is no figure. */
  value: string;
  /** One or two short lines: what it rests on. */
  rests: string[];
}

/** A number of animals that need not be whole: one decimal below 100, none above. */
export function effectiveCount(value: number): string {
  return value < 99.95 ? decimals(value, 1) : grouped(Math.round(value));
}

/**
 * The figures of a set in three rows: diversity, founders, inbreeding. What cannot be told is said in words, never as 0.
 *
 * @param all the same of all members, where the set is a part of them; their figures stand beside for comparison
 */
export function setFigures(set: LineageSet, all: LineageSet | null): SetFigure[][] {
  return [
    [meanKinship(set, all), geneDiversity(set, all), founderGenomes(set, all)],
    [effectiveFounders(set, all), effectiveAncestors(set, all), completeness(set, all)],
    [meanInbreeding(set, all), increase(set, all), effectiveSize(set, all)],
  ];
}

const nothing = 'nothing known';
const isBlind = (set: LineageSet): boolean => set.nothingKnown === set.animals;

/** The same figure of all members, in a short line; nothing where it is the same set or is not known. */
function beside(all: LineageSet | null, read: (set: LineageSet) => number | null, write: (value: number) => string) {
  const value = all && !isBlind(all) ? read(all) : null;
  return value === null ? [] : [`all members ${write(value)}`];
}

function meanKinship(set: LineageSet, all: LineageSet | null): SetFigure {
  const value = isBlind(set) ? null : set.meanKinship;
  return {
    name: 'mean-kinship',
    words: 'mean kinship',
    value: value === null ? nothing : percent(value),
    rests: [`of ${counted(set.animals, ['animal', 'animals'])}`, ...beside(all, (one) => one.meanKinship, percent)],
  };
}

function geneDiversity(set: LineageSet, all: LineageSet | null): SetFigure {
  const value = isBlind(set) ? null : set.geneDiversity;
  return {
    name: 'gene-diversity',
    words: 'gene diversity',
    value: value === null ? nothing : percent(value),
    rests: ['1 − mean kinship', ...beside(all, (one) => one.geneDiversity, percent)],
  };
}

function founderGenomes(set: LineageSet, all: LineageSet | null): SetFigure {
  const value = isBlind(set) ? null : set.founderGenomeEquivalents;
  return {
    name: 'founder-genomes',
    words: 'founder genomes',
    value: value === null ? nothing : effectiveCount(value),
    rests: ['unrelated founders’ worth', ...beside(all, (one) => one.founderGenomeEquivalents, effectiveCount)],
  };
}

function effectiveFounders(set: LineageSet, all: LineageSet | null): SetFigure {
  const value = isBlind(set) ? null : set.effectiveFounders;
  return {
    name: 'effective-founders',
    words: 'effective founders',
    value: value === null ? nothing : effectiveCount(value),
    rests: ['each founder counted by itself', ...beside(all, (one) => one.effectiveFounders, effectiveCount)],
  };
}

function effectiveAncestors(set: LineageSet, all: LineageSet | null): SetFigure {
  const value = isBlind(set) ? null : set.effectiveAncestors.effective;
  return {
    name: 'effective-ancestors',
    words: 'effective ancestors',
    value: value === null ? nothing : effectiveCount(value),
    rests: [
      set.effectiveAncestors.unexplained > 1e-9
        ? `${percent(set.effectiveAncestors.unexplained)} left unexplained`
        : `${counted(set.effectiveAncestors.picked, ['ancestor', 'ancestors'])} explain all`,
      ...beside(all, (one) => one.effectiveAncestors.effective, effectiveCount),
    ],
  };
}

function completeness(set: LineageSet, all: LineageSet | null): SetFigure {
  const { generationEquivalents, mean, greatest } = set.depth;
  return {
    name: 'completeness',
    words: 'complete generations',
    value: generationEquivalents === null || isBlind(set) ? nothing : decimals(generationEquivalents, 2),
    rests: [
      ...(mean === null ? [] : [`depth ${decimals(mean, 1)} on average, at most ${greatest}`]),
      ...beside(
        all,
        (one) => one.depth.generationEquivalents,
        (value) => decimals(value, 2),
      ),
    ],
  };
}

function meanInbreeding(set: LineageSet, all: LineageSet | null): SetFigure {
  const { mean, least, greatest, animals } = set.inbreeding;
  const unknown = set.animals - animals;
  return {
    name: 'mean-inbreeding',
    words: 'mean F',
    value: mean === null ? nothing : percent(mean),
    rests: [
      ...(least === null || greatest === null
        ? []
        : [`${percentRange(least, greatest)} of ${counted(animals, ['animal', 'animals'])}`]),
      ...(unknown > 0 && mean !== null ? [`nothing known of ${unknown}`] : []),
      ...beside(all, (one) => one.inbreeding.mean, percent),
    ],
  };
}

function increase(set: LineageSet, all: LineageSet | null): SetFigure {
  const { increase: value, animals } = set.effectiveSize;
  return {
    name: 'increase',
    words: 'increase per generation',
    value: value === null ? 'too little known' : percent(value),
    rests: [
      value === null ? 'no animal has two known parents and more' : `from ${counted(animals, ['animal', 'animals'])}`,
      ...beside(all, (one) => one.effectiveSize.increase, percent),
    ],
  };
}

function effectiveSize(set: LineageSet, all: LineageSet | null): SetFigure {
  const { effectiveSize: value, standardError, increase: rise } = set.effectiveSize;
  const missing = rise === null ? 'see increase per generation' : 'no inbreeding recorded';
  return {
    name: 'effective-size',
    words: 'effective size',
    value: value === null ? (rise === null ? 'too little known' : word('undefined')) : effectiveCount(value),
    rests: [
      value === null
        ? missing
        : standardError === null
          ? 'from one animal alone'
          : `± ${effectiveCount(standardError)}`,
      ...beside(all, (one) => one.effectiveSize.effectiveSize, effectiveCount),
    ],
  };
}
