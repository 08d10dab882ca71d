import { word } from '../words/word.ts';
import type { ExplainedFigure } from './explained-figures.ts';

/** What stands beside a figure, and on the help page. */
export interface FigureHelp {
  readonly name: string;
  /** What it says, in one or two sentences. */
  readonly what: string;
  readonly unit: string;
  readonly range: string;
  /** Who published it. */
  readonly source: string;
  /** What it must not be taken for. */
  readonly caution: string;
  readonly example: {
    readonly given: string;
    /** The sum, row by row; the last row is its result. */
    readonly rows: readonly (readonly [string, string])[];
  };
}

const countsOnlyRecords =
  'It counts only what is recorded; founders count as unrelated unless their source says otherwise.';
const effectiveCount = 'animals (an effective number, so it need not be whole)';

/** Each figure explained once, for the notes in the margin and for the help page. */
export const figureHelp: Readonly<Record<ExplainedFigure, FigureHelp>> = {
  inbreeding: {
    name: 'inbreeding F',
    what: 'The chance that both copies of a gene in an animal come from one and the same copy in an ancestor. It is the kinship of its parents.',
    unit: 'a probability, printed in per cent',
    range: '0 to 100\u202f%; young of full brother and sister 25\u202f%',
    source: 'Wright (1922); Malécot (1948)',
    caution:
      'The pedigree counts only what it knows: read it with its depth. Where nothing is known of an animal it is not 0, it is unknown.',
    example: {
      given: 'Full brother and sister are paired. Their two parents are unrelated founders.',
      rows: [
        ['through their father, (½)³', '12.5\u202f%'],
        ['through their mother, (½)³', '12.5\u202f%'],
        ['F of the young', '25\u202f%'],
      ],
    },
  },
  'inbreeding-range': {
    name: 'range of F',
    what: 'Where parents are uncertain, F is what is expected over the candidate pairs; the range runs from the least to the most related pair.',
    unit: 'a probability, printed in per cent',
    range: 'both ends 0 to 100\u202f%',
    source: 'Wright (1922), over the candidate pairs of the clutch',
    caution: 'The expected value may be one that no young can have: each has one father, not three quarters of one.',
    example: {
      given: 'The sire is the dam’s brother with odds of 0.75, or an unrelated male with 0.25.',
      rows: [
        ['least: the unrelated male', '0\u202f%'],
        ['greatest: the brother', '25\u202f%'],
        ['expected, 0.75 × 25\u202f%', '18.75\u202f%'],
      ],
    },
  },
  'partial-inbreeding': {
    name: 'partial inbreeding',
    what: 'The part of F that is owed to one founder or source: the chance that both copies come from that founder.',
    unit: 'a probability, printed in per cent',
    range: '0 to F; all parts add up to F',
    source: 'Lacy, Alaks & Walsh (1996)',
    caution: countsOnlyRecords,
    example: {
      given: 'Young of full brother and sister whose parents are two founders.',
      rows: [
        ['owed to the one founder', '12.5\u202f%'],
        ['owed to the other', '12.5\u202f%'],
        ['F', '25\u202f%'],
      ],
    },
  },
  'ancestral-inbreeding': {
    name: 'ancestral inbreeding',
    what: 'The chance that a gene of an animal was already doubled by inbreeding in one of its ancestors. Genes that stood that test before may do less harm when they meet again.',
    unit: 'a probability, printed in per cent',
    range: '0 to 100\u202f%',
    source: 'Ballou (1997)',
    caution: 'The recursion takes a gene’s history and F for independent; the exact value can be lower.',
    example: {
      given: 'The sire has F 25\u202f%, the dam 0\u202f%; nothing older is inbred.',
      rows: [
        ['half of the genes by the sire, ½ × 25\u202f%', '12.5\u202f%'],
        ['half by the dam, ½ × 0\u202f%', '0\u202f%'],
        ['ancestral inbreeding', '12.5\u202f%'],
      ],
    },
  },
  'mean-inbreeding': {
    name: 'mean F',
    what: 'The mean of the expected inbreeding coefficients of the animals. Those of which nothing is known are left out.',
    unit: 'a probability, printed in per cent',
    range: '0 to 100\u202f%',
    source: 'Wright (1922)',
    caution: 'A shallow pedigree makes it low. Compare years only where their pedigrees reach equally far back.',
    example: {
      given: 'Three animals with F 0\u202f%, 12.5\u202f% and 25\u202f%; of a fourth nothing is known.',
      rows: [
        ['0 + 12.5 + 25', '37.5\u202f%'],
        ['divided by three animals', '12.5\u202f%'],
      ],
    },
  },
  increase: {
    name: 'increase of F per generation',
    what: 'How much of the diversity that was left is lost with each generation, from each animal’s F and its complete generations t: 1 − (1 − F)^(1/(t − 1)), and then the mean.',
    unit: 'a part of what was left, in per cent a generation',
    range: '0 to 100\u202f%',
    source: 'Gutiérrez, Cervantes & Goyache (2009)',
    caution: 'Only animals with more than one complete generation count. With few of them it says little.',
    example: {
      given: 'One animal with F 25\u202f% and three complete generations.',
      rows: [
        ['what is left, 1 − 0.25', '75\u202f%'],
        ['left of it in each of two generations, √0.75', '86.6\u202f%'],
        ['increase per generation', '13.4\u202f%'],
      ],
    },
  },
  'effective-size': {
    name: 'effective size',
    what: 'So many animals, pairing at random, would lose diversity as fast as this set did: 1/(2 × increase).',
    unit: effectiveCount,
    range: 'above ½; undefined where no increase is recorded',
    source: 'Gutiérrez, Cervantes & Goyache (2009)',
    caution:
      'It looks back over the recorded generations, not ahead. Without recorded inbreeding it is undefined, not endless.',
    example: {
      given: 'The increase is 13.4\u202f% a generation.',
      rows: [
        ['2 × 0.134', '0.268'],
        ['1 / 0.268', '3.7 animals'],
      ],
    },
  },
  kinship: {
    name: 'kinship φ',
    what: 'The chance that two copies of a gene, one taken from each of two animals, come from one and the same copy in an ancestor. It is the F that young of the two would have.',
    unit: 'a probability, printed in per cent',
    range: '0 to 100\u202f%; half-sibs 12.5\u202f%, full sibs 25\u202f%',
    source: 'Malécot (1948)',
    caution: countsOnlyRecords,
    example: {
      given: 'Two half-sibs have the same father, a founder; their mothers are unrelated founders.',
      rows: [
        ['both copies come from the father, ½ × ½', '25\u202f%'],
        ['and both are the same one of his two', '½'],
        ['kinship, ½ × 25\u202f%', '12.5\u202f%'],
      ],
    },
  },
  'mean-kinship': {
    name: 'mean kinship',
    what: 'The mean of the kinships among the animals, each with itself included. For one animal: with all living ones of its line. A low one means genes that are rare.',
    unit: 'a probability, printed in per cent',
    range: '0 to 100\u202f%; an animal with itself 50\u202f% or more',
    source: 'Ballou & Lacy (1995)',
    caution: countsOnlyRecords,
    example: {
      given: 'Two unrelated founders.',
      rows: [
        ['each with itself, 2 × 50\u202f%', '100\u202f%'],
        ['with each other, 2 × 0\u202f%', '0\u202f%'],
        ['mean of the four', '25\u202f%'],
      ],
    },
  },
  'gene-diversity': {
    name: 'gene diversity',
    what: 'What is left of the diversity that a great many unrelated founders would have: 1 − mean kinship.',
    unit: 'a part of the diversity, in per cent',
    range: '0 to 100\u202f%; two founders hold 75\u202f%',
    source: 'Lacy (1989)',
    caution:
      'A set of few animals holds little however unrelated they are. Unknown parents count as unrelated founders.',
    example: {
      given: 'Two unrelated founders, mean kinship 25\u202f%.',
      rows: [
        [word('whole'), '100\u202f%'],
        ['less mean kinship', '25\u202f%'],
        ['gene diversity', '75\u202f%'],
      ],
    },
  },
  'added-diversity': {
    name: 'adds to the line',
    what: 'How much gene diversity a line has more, or less, once one young of a proposed pair or one animal from elsewhere is counted among its living.',
    unit: 'points; one point is one in a hundred of gene diversity',
    range: 'above 0 it brings what is rare, below 0 more of what is common',
    source: 'the difference of two gene diversities: Nei (1973), with the mean kinship of Ballou & Lacy (1995)',
    caution: countsOnlyRecords,
    example: {
      given:
        'A pair of unrelated founders is the whole line. The female has one young by an unrelated male from elsewhere.',
      rows: [
        ['gene diversity of the two', '75\u202f%'],
        ['of the three: 1 − 2/9', '77.78\u202f%'],
        ['adds to the line', '+2.78 points'],
      ],
    },
  },
  'founder-genomes': {
    name: 'founder genome equivalents',
    what: 'So many unrelated founders would hold as much diversity as these animals do: 1/(2 × mean kinship).',
    unit: effectiveCount,
    range: '½ upwards',
    source: 'Lacy (1989); Ballou & Lacy (1995)',
    caution: countsOnlyRecords,
    example: {
      given: 'Mean kinship is 12.5\u202f%.',
      rows: [
        ['2 × 0.125', '0.25'],
        ['1 / 0.25', '4 founders'],
      ],
    },
  },
  'effective-founders': {
    name: 'effective founders',
    what: 'So many founders, each giving the same part, would make as even a gene pool: 1/Σp², p being each founder’s part.',
    unit: effectiveCount,
    range: '1 to the number of founders and unknown parents',
    source: 'Lacy (1989)',
    caution: 'It knows nothing of what was lost on the way; founder genome equivalents do.',
    example: {
      given: 'Three founders give ½, ¼ and ¼ of the genes.',
      rows: [
        ['½² + ¼² + ¼²', '0.375'],
        ['1 / 0.375', '2.7 founders'],
      ],
    },
  },
  'effective-ancestors': {
    name: 'effective ancestors',
    what: 'So many ancestors, each explaining the same part, would explain the gene pool. Ancestors are picked one by one, each by what the ones before it do not explain.',
    unit: effectiveCount,
    range: '1 upwards; usually below the effective founders',
    source: 'Boichard, Maignel & Verrier (1997)',
    caution: 'Much below the effective founders: the line went through a bottleneck.',
    example: {
      given: 'Four founders are the parents of one pair; all animals of the set are young of that pair.',
      rows: [
        ['effective founders, 1/(4 × ¼²)', '4'],
        ['each of the pair explains', '½'],
        ['effective ancestors, 1/(½² + ½²)', '2'],
      ],
    },
  },
  shares: {
    name: 'shares of sources and founders',
    what: 'The expected part of the genes that comes from each source, founder of unknown origin or unknown parent: half from each parent, averaged over the candidates.',
    unit: 'a part of the genome, in per cent',
    range: '0 to 100\u202f%; all shares add up to 100\u202f%',
    source: 'Lacy (1989)',
    caution: 'It is what is expected; what an animal really got lies around it.',
    example: {
      given: 'The sire comes from source A; the dam is half A, half B.',
      rows: [
        ['A, ½ × 1 + ½ × ½', '75\u202f%'],
        ['B, ½ × ½', '25\u202f%'],
      ],
    },
  },
  'living-worth': {
    name: 'as much as so many animals',
    what: 'What all living animals carry of a source or a founder, their expected shares added up: as much of it as so many whole animals would carry.',
    unit: 'animals (need not be whole)',
    range: '0, where nothing of it lives, upwards',
    source: 'sum of the expected shares of the gene pool: Lacy (1989)',
    caution: 'Many small shares may all be of the same genes; genes still there tells that.',
    example: {
      given: 'A founder lives, and two of its grandyoung.',
      rows: [
        ['the founder', '1'],
        ['two grandyoung, 2 × ¼', '0.5'],
        ['as much as so many animals', '1.5'],
      ],
    },
  },
  'genes-kept': {
    name: 'genes still there',
    what: 'Of the two copies of each gene that a founder had, the part that some living animal still carries: the chance that any one of them is not lost.',
    unit: 'a probability, printed in per cent',
    range: '0 to 100\u202f%; 100\u202f% while the founder itself lives',
    source: 'MacCluer et al. (1986), by counting every way of descent, or by dropping genes where there are too many',
    caution: 'What no living animal carries is lost for good, unless it lives on outside this register.',
    example: {
      given: 'A founder is dead; two of its young live.',
      rows: [
        ['a copy does not reach the one, ½', '50\u202f%'],
        ['nor the other, ½ × ½', '25\u202f%'],
        ['genes still there', '75\u202f%'],
      ],
    },
  },
  'traced-share': {
    name: 'traced share',
    what: 'The expected part of the genome from founders that came under this very label with papers behind it, corroborated or better.',
    unit: 'a part of the genome, in per cent',
    range: '0 to 100\u202f%',
    source: 'the rules of this register for the standing of a label',
    caution: 'It speaks of papers, not of the truth. With candidate parents the least possible share is shown as well.',
    example: {
      given: 'Three of four grandparents came with a permit that names the place; of the fourth it is said.',
      rows: [
        ['¾ documented', '75\u202f%'],
        ['¼ stated, does not count', '0\u202f%'],
        ['traced share', '75\u202f%'],
      ],
    },
  },
  depth: {
    name: 'pedigree depth',
    what: 'Generations on the longest recorded way up to a founder.',
    unit: word('generations'),
    range: '0 for a founder, upwards',
    source: 'a count of this register',
    caution: 'One long way says little where the others end early: see complete generations.',
    example: {
      given: 'The dam is a founder; the sire’s parents are founders.',
      rows: [
        ['by the dam', '1'],
        ['by the sire', '2'],
        ['depth, the longest', '2'],
      ],
    },
  },
  completeness: {
    name: 'complete generations',
    what: 'Each known ancestor counts by the part it has: parents ½ each, grandparents ¼ each, and so on. Two known parents are one complete generation.',
    unit: word('generations'),
    range: '0 for a founder, at most the depth',
    source: 'Maignel, Boichard & Verrier (1996)',
    caution: 'Below two, relatives further back would not show and a low F is worth little.',
    example: {
      given: 'Both parents are known, and both parents of the sire.',
      rows: [
        ['parents, 2 × ½', '1'],
        ['grandparents, 2 × ¼', '0.5'],
        ['complete generations', '1.5'],
      ],
    },
  },
  'completeness-index': {
    name: 'completeness index',
    what: 'How complete both sides of a pedigree are over some generations, the weaker side weighing more: 2SD/(S + D).',
    unit: 'a part, in per cent',
    range: '0 to 100\u202f%; 0 where one side is unknown',
    source: 'MacCluer et al. (1983)',
    caution: 'It depends on how many generations are looked at; compare like with like.',
    example: {
      given: 'Over two generations: the sire and both his parents are known; the dam is known, her parents are not.',
      rows: [
        ['sire’s side, (1 + 1)/2', '1'],
        ['dam’s side, (1 + 0)/2', '0.5'],
        ['2 × 1 × 0.5 / 1.5', '66.7\u202f%'],
      ],
    },
  },
  'filial-generation': {
    name: 'filial generation',
    what: 'Generations since the wild, counted by the parent that is nearer to it: young with one wild parent are F1.',
    unit: word('generations'),
    range: 'wild (0), F1 upwards; not told where it cannot be known',
    source: 'CITES Resolution Conf. 10.16',
    caution: 'It decides no permit; the local authority does.',
    example: {
      given: 'The dam was collected in the wild; the sire is F2.',
      rows: [
        ['least of the parents', '0'],
        ['one more', 'F1'],
      ],
    },
  },
};
