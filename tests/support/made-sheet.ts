import { exportJWK, generateKeyPair, type CryptoKey } from 'jose';
import { sheetCautions } from '../../shared/sheet/cautions.ts';
import type { SheetAnimal, SheetDocument } from '../../shared/sheet/sheet-document.ts';
import { thumbprintOf, type SheetKey } from '../../shared/sheet/sheet-keys.ts';

/** A key of a register, made for a test. */
export interface MadeKey extends SheetKey {
  readonly privateKey: CryptoKey;
}

/** Makes a key that is in use since the year 2020. */
export async function madeKey(used: Partial<Pick<SheetKey, 'usedFrom' | 'usedUntil'>> = {}): Promise<MadeKey> {
  const { publicKey, privateKey } = await generateKeyPair('EdDSA', { crv: 'Ed25519' });
  const { x = '' } = await exportJWK(publicKey);
  return { kid: await thumbprintOf(x), x, usedFrom: '2020-01-01T00:00:00.000Z', usedUntil: null, ...used, privateKey };
}

/** A small sheet: a froglet, its parents, one of them private, and the source of the other one. */
export function madeSheet(given: Partial<SheetDocument> = {}): SheetDocument {
  return {
    format: 'linekeeper-provenance-sheet',
    version: 1,
    number: 'PS-1001-2',
    issued: '2024-05-01T10:00:00.000Z',
    validUntil: null,
    issuer: { register: 'Circle of Frogs', address: 'https://register.example.org', invented: true },
    lookUp: 'https://register.example.org/s/abc',
    keeper: 'Ø. Ambleside',
    animals: [madeAnimal()],
    ancestors: [
      {
        ref: 'a2',
        isPrivate: false,
        number: '1001-5',
        sex: 'male',
        hatched: '1994~',
        species: 'Epipedobates anthonyi',
        line: 'Quebrada Sonora',
        clutch: null,
        source: 's1',
        hasMoreAncestors: false,
        standings: [{ standing: 'documented', share: 1 }],
      },
      {
        ref: 'a3',
        isPrivate: true,
        number: null,
        sex: null,
        hatched: null,
        species: null,
        line: null,
        clutch: null,
        source: null,
        hasMoreAncestors: true,
        standings: [],
      },
    ],
    clutches: [
      {
        ref: 'c1',
        isPrivate: false,
        laid: '2024-02-11',
        parents: [
          { animal: 'a2', as: 'sire', probability: 1 },
          { animal: 'a3', as: 'dam', probability: 0.7 },
        ],
        pairs: null,
        unknownSire: 0,
        unknownDam: 0.3,
      },
    ],
    sources: [
      {
        ref: 's1',
        isPrivate: false,
        title: 'Import, about 1994',
        kind: 'import',
        date: '1994~',
        countryOfExport: 'EC',
        labelAsReceived: 'Quebrada “Sonora”',
        permitReferences: [],
        baseKinship: 0,
        claims: [
          {
            aspect: 'locality',
            value: 'Quebrada Sonora',
            standing: 'documented',
            because: 'documented, because an export permit names it.',
          },
        ],
      },
    ],
    cautions: [...sheetCautions],
    ...given,
  };
}

/** The froglet of `madeSheet`. */
export function madeAnimal(given: Partial<SheetAnimal> = {}): SheetAnimal {
  return {
    ref: 'a1',
    number: '1002-3',
    code: 'EA-7',
    species: 'Epipedobates anthonyi',
    commonName: null,
    citesAppendix: 'II',
    sex: 'unsexed',
    sexKnownBy: null,
    status: 'alive',
    hatched: '2024-03-01',
    outOfWater: '2024-04-20',
    clutch: 'c1',
    source: null,
    line: 'Quebrada Sonora',
    label: {
      name: 'Quebrada Sonora',
      kind: 'locality',
      standing: 'unknown',
      inWords: '50 % documented · 50 % unknown',
      shares: [
        { standing: 'documented', share: 0.5 },
        { standing: 'unknown', share: 0.5 },
      ],
      tracedShare: { expected: 0.5, least: 0.5 },
      otherLabels: [],
      flags: [{ code: 'origin-gap', severity: 'weakens', acknowledged: false }],
    },
    inbreeding: { expected: 0.0625, least: 0, greatest: 0.125, nothingKnown: false, bothParentsKnown: 0.7 },
    depth: 3,
    fullDepth: 1,
    generationEquivalents: 1.75,
    completeness: { generations: 5, index: 0.31 },
    filialGeneration: 1,
    origins: [
      { kind: 'source', ref: 's1', standing: 'documented', share: 0.5 },
      { kind: 'unknown-parent', ref: null, standing: 'unknown', share: 0.5 },
    ],
    claims: [],
    photographs: [{ sha256: 'ab'.repeat(32), view: 'back', takenOn: '2024-04-22' }],
    ...given,
  };
}
