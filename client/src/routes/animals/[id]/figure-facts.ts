import type { FigureName } from './figure-list.ts';

/** What is the same for a figure whatever the animal. */
export interface FigureFacts {
  unit: string;
  range: string;
  /** Who published the measure. */
  source: string;
}

const probability = 'a probability, in per cent';

/** Unit, range and published source of each figure of the strip. */
export const figureFacts: Readonly<Record<FigureName, FigureFacts>> = {
  depth: {
    unit: 'generations; the index in per cent',
    range: '0 for a founder, upwards; the index 0 to 100\u202f%',
    source: 'equivalents: Maignel, Boichard & Verrier 1996; index: MacCluer et al. 1983',
  },
  filial: {
    unit: 'generations',
    range: 'wild, then F1 upwards; left out where it cannot be known',
    source: 'CITES Resolution Conf. 10.16',
  },
  kinship: {
    unit: probability,
    range: '0 to 100\u202f%; two founders alone have 25\u202f%',
    source: 'Ballou & Lacy 1995',
  },
  traced: {
    unit: 'a part of the genome, in per cent',
    range: '0 to 100\u202f%',
    source: 'the rules of this register for the standing of a label',
  },
  ancestral: {
    unit: probability,
    range: '0 to 100\u202f%',
    source: 'Ballou 1997; old and new part after Kalinowski, Hedrick & Miller 2000',
  },
  inbreeding: {
    unit: probability,
    range: '0 to 100\u202f%; young of full siblings 25\u202f%',
    source: 'Wright 1922; Malécot 1948; parts: Lacy, Alaks & Walsh 1996',
  },
};
