import { goto } from '../opening.ts';
import type { Action, Needs } from '../action.ts';

const to = (address: string, words: string, needs?: Needs, keys?: string): Action => ({
  where: 'everywhere',
  words,
  run: () => goto(address),
  ...(needs ? { needs } : {}),
  ...(keys === undefined ? {} : { keys }),
});

/** The ways to the screens. */
export const go = {
  goToday: to('/', 'Go to today: what is due', ['read', 'clutch'], 'T'),
  goRegister: to('/register', 'Go to the register', undefined, 'R'),
  goLines: to('/lines', 'Go to the lines', ['read', 'line'], 'L'),
  goSpecies: to('/species', 'Go to the species profiles', ['read', 'species']),
  goPairings: to('/pairings', 'Go to the pairings', ['read', 'pairing']),
  goClutches: to('/clutches', 'Go to the clutches', ['read', 'clutch']),
  goMatch: to('/match', 'Go to Match', ['ask', 'lineage']),
  goPlans: to('/plans', 'Go to the kept plans', ['read', 'plan']),
  goSources: to('/sources', 'Go to the sources', ['read', 'source']),
  goPlaces: to('/places', 'Go to the map of places', ['read', 'claim']),
  goReview: to('/review', 'Review evidence', ['review', 'evidence']),
  goTransfers: to('/transfers', 'Go to the transfers: animals given and received', ['read', 'transfer']),
  goImport: to('/import', 'Import a register sheet', ['add', 'import']),
  goExport: to('/export', 'Export animals, provenance or the journal', ['read', 'import']),
  goJournal: to('/journal', 'Go to the journal', ['read', 'journal']),
  goClub: to('/club', 'Go to the club', ['read', 'club']),
  goAccount: to('/club/account', 'Go to my account', ['read', 'account']),
  goGlossary: to('/help/glossary', 'Read what the words mean'),
  goFigures: to('/help/figures', 'Read what the figures say'),
} satisfies Record<string, Action>;
