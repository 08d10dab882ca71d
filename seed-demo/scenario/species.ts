import type { SpeciesPlan } from '../engine/plan.ts';

/** The species are real; what they do in this club is not. */
const practice = 'common practice, no source';

export const thumbnail = 'Ranitomeya imitator';
export const moss = 'Theloderma corticale';
export const phantasmal = 'Epipedobates anthonyi';

const sizesOfPhantasmal =
  'Caldwell & Summers 2003 (as E. tricolor), quoted by AmphibiaWeb; extremes: common practice, no source';
const eggsOfPhantasmal =
  'least and most of usual: common practice, no source; most ever: Coloma et al. 2004 and Zimmermann 1989, quoted by AmphibiaWeb';

export const species: readonly SpeciesPlan[] = [
  {
    scientificName: phantasmal,
    commonName: "Anthony's poison frog",
    citesAppendix: 'II',
    nativeRange: ['EC', 'PE'],
    ranges: {
      'laying-to-hatching': { usual: [11, 16], extreme: [8, 24], source: practice },
      'hatching-to-leaving-water': { usual: [55, 95], extreme: [40, 150], source: practice },
      maturity: { usual: [8, 14], extreme: [6, 24], source: practice },
      'sexable-by-looks': { usual: [8, 10], extreme: [6, 14], source: practice },
      'eggs-per-clutch': { usual: [12, 30], extreme: [1, 40], source: eggsOfPhantasmal },
      'between-clutches': { usual: [10, 30], extreme: [5, null], source: practice },
      'snout-vent-male': { usual: [19, 24.5], extreme: [17, 26], source: sizesOfPhantasmal },
      'snout-vent-female': { usual: [21.5, 26.5], extreme: [19, 28], source: sizesOfPhantasmal },
      lifespan: { usual: [6, 11], extreme: [null, 15], source: practice },
    },
  },
  {
    scientificName: thumbnail,
    commonName: 'Mimic poison frog',
    citesAppendix: 'II',
    nativeRange: ['PE'],
    ranges: {
      'laying-to-hatching': { usual: [12, 18], extreme: [9, 25], source: practice },
      'hatching-to-leaving-water': { usual: [60, 100], extreme: [45, 150], source: practice },
      maturity: { usual: [9, 14], extreme: [7, 24], source: practice },
      'sexable-by-looks': { usual: [9, 12], extreme: [7, 16], source: practice },
      'eggs-per-clutch': { usual: [1, 4], extreme: [1, 6], source: practice },
      'between-clutches': { usual: [7, 21], extreme: [4, null], source: practice },
      'snout-vent-male': { usual: [16, 19], extreme: [14, 21], source: practice },
      'snout-vent-female': { usual: [17, 21], extreme: [15, 23], source: practice },
      lifespan: { usual: [6, 12], extreme: [null, 18], source: practice },
    },
  },
  {
    scientificName: moss,
    commonName: 'Mossy frog',
    citesAppendix: null,
    nativeRange: ['VN', 'LA', 'CN'],
    ranges: {
      'laying-to-hatching': { usual: [8, 15], extreme: [6, 25], source: practice },
      'hatching-to-leaving-water': { usual: [90, 200], extreme: [60, 420], source: practice },
      maturity: { usual: [16, 30], extreme: [11, 48], source: practice },
      'sexable-by-looks': { usual: [16, 24], extreme: [12, 36], source: practice },
      'eggs-per-clutch': { usual: [6, 20], extreme: [1, 60], source: practice },
      'between-clutches': { usual: [21, 60], extreme: [10, null], source: practice },
      'snout-vent-male': { usual: [55, 70], extreme: [48, 78], source: practice },
      'snout-vent-female': { usual: [65, 85], extreme: [55, 92], source: practice },
      lifespan: { usual: [10, 16], extreme: [null, 25], source: practice },
    },
  },
];
