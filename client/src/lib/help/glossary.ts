import { word } from '../words/word.ts';
/** One word of the trade, and what the register means by it. */
export interface GlossaryEntry {
  /** Anchor on the page. */
  readonly id: string;
  readonly term: string;
  readonly meaning: string;
}

/** The words of the screens, each with one meaning, in the groups in which they belong together. */
export const glossary: readonly { readonly title: string; readonly entries: readonly GlossaryEntry[] }[] = [
  {
    title: 'Animals and how they are kept',
    entries: [
      {
        id: 'registry-number',
        term: 'Registry number',
        meaning:
          'The number that the register gives an animal. It is never used again. Its last sign, a digit or X, is a check that catches a slip of the pen: 10704-4.',
      },
      {
        id: 'code',
        term: 'Code',
        meaning: 'The keeper’s own name for an animal, a clutch or a source. No two records of one keeper share it.',
      },
      {
        id: 'line',
        term: 'Line',
        meaning: 'Animals that are bred among themselves under one label.',
      },
      {
        id: 'pairing',
        term: 'Pairing',
        meaning: 'Animals housed together to breed, over some time: a pair, a trio or a larger group.',
      },
      {
        id: 'notation',
        term: '1.2.0',
        meaning:
          'Males, females and animals not sexed, counted in this order. 1.2.0 is a trio of one male and two females.',
      },
      {
        id: 'clutch',
        term: 'Clutch',
        meaning: 'Eggs of one laying. All its young share the same parents, also where nobody knows which ones.',
      },
      {
        id: 'candidate',
        term: 'Candidate parent',
        meaning:
          'An animal that may be the sire or the dam of a clutch, with its odds. The odds of one side add up to 1; an unknown parent can be one of them.',
      },
      {
        id: 'clutch-mate',
        term: word('Clutch-mate'),
        meaning: 'An animal of the same clutch.',
      },
      {
        id: 'sire',
        term: 'Sire and dam',
        meaning: 'The father and the mother of a clutch.',
      },
      {
        id: 'out-of-water',
        term: 'Out of water',
        meaning: 'The day on which a froglet left the water on four legs.',
      },
      {
        id: 'snout-vent',
        term: 'Snout to vent',
        meaning: 'The length of an animal from its snout to its vent, in millimetres.',
      },
      {
        id: 'proven',
        term: 'Proven',
        meaning: 'A clutch that is certainly of this animal has hatched. It is reckoned, not typed.',
      },
      {
        id: 'gone',
        term: 'Gone',
        meaning: 'Left the club. The record stays, and the animal may come back.',
      },
      {
        id: 'withdrawn',
        term: 'Withdrawn',
        meaning: 'Taken out of the lists, with a reason. Nothing is destroyed, and it can be brought back.',
      },
    ],
  },
  {
    title: 'Where animals come from',
    entries: [
      {
        id: 'source',
        term: 'Source',
        meaning:
          'How founders came into keeping together: a shipment, a collection in the wild, or a purchase about which nothing older is known.',
      },
      {
        id: 'founder',
        term: 'Founder',
        meaning: 'An animal whose parents the register does not have. With it the pedigree begins.',
      },
      {
        id: 'base-kinship',
        term: 'Base kinship',
        meaning:
          'How related the founders of one source are taken to be. 0 counts them as unrelated, 0.25 as full siblings. It is an assumption, and it is recorded as one.',
      },
      {
        id: 'unknown-origin',
        term: 'Unknown origin',
        meaning: 'Neither a clutch nor a source is recorded. Nothing can be said about how inbred such an animal is.',
      },
      {
        id: 'vague-date',
        term: 'Vague date',
        meaning:
          'A date as far as history left it: 1994~ is about 1994, 199X the 1990s, 1993/1996 some time from 1993 to 1996 (EDTF, ISO 8601-2).',
      },
    ],
  },
  {
    title: 'Labels and how well they stand',
    entries: [
      {
        id: 'label',
        term: 'Label',
        meaning: 'The name under which animals are traded. It can be a place, a trade name or the name of a cross.',
      },
      {
        id: 'locality',
        term: 'Locality',
        meaning: 'A label that names a place in the wild.',
      },
      {
        id: 'trade-name',
        term: 'Trade name',
        meaning: 'A label that somebody made up for a look. It says nothing about a place.',
      },
      {
        id: 'cross',
        term: 'Cross',
        meaning:
          'Young of parents of different lines, and the kind of line that is bred from such young. No label of a place carries over to them.',
      },
      {
        id: 'unlabelled',
        term: 'Unlabelled',
        meaning: 'The kind of line whose animals came without a name.',
      },
      {
        id: 'claim',
        term: 'Claim',
        meaning: 'What somebody says about where a source, a line or an animal comes from.',
      },
      {
        id: 'evidence',
        term: 'Evidence',
        meaning:
          'A paper that supports or contradicts a claim. It counts once a registrar who did not bring it has accepted it.',
      },
      {
        id: 'primary-paper',
        term: 'Primary paper',
        meaning:
          'A collecting or export permit that names the place, a field note of the collector, or a publication on that shipment.',
      },
      {
        id: 'secondary-paper',
        term: 'Secondary paper',
        meaning:
          'A paper that repeats what others said: the list of an importer, an invoice, a letter of a keeper from before.',
      },
      {
        id: 'standing',
        term: 'Standing',
        meaning: 'How well a claim stands, reckoned from its evidence and never typed.',
      },
      {
        id: 'documented',
        term: 'Documented',
        meaning:
          'A primary paper names the place: a permit with the locality, a field note, a publication on that shipment.',
      },
      {
        id: 'corroborated',
        term: 'Corroborated',
        meaning: 'Two or more secondary papers of different issuers agree, and none contradicts.',
      },
      {
        id: 'stated',
        term: 'Stated',
        meaning: 'Somebody’s word, or one secondary paper.',
      },
      {
        id: 'by-looks',
        term: 'By looks',
        meaning: 'Assigned from appearance. Looks alone tell no place.',
      },
      {
        id: 'disputed',
        term: 'Disputed',
        meaning: 'An accepted paper contradicts the claim.',
      },
      {
        id: 'unknown',
        term: 'Unknown',
        meaning: 'No claim is recorded.',
      },
      {
        id: 'acknowledged',
        term: 'Acknowledged',
        meaning: 'A mark that a registrar has looked at, with a reason. It still stands and still shows.',
      },
      {
        id: 'flag',
        term: 'Mark',
        meaning:
          'What breaks or weakens a label, or is worth knowing, with what would clear it. A mark that nobody can clear any more is acknowledged; it stays.',
      },
    ],
  },
  {
    title: 'People and papers',
    entries: [
      {
        id: 'keeper',
        term: 'Keeper',
        meaning: 'A member of the club. Every record belongs to a keeper, who may change it.',
      },
      {
        id: 'registrar',
        term: 'Registrar',
        meaning: 'A keeper who reviews evidence, may correct every record, and sees private ones.',
      },
      {
        id: 'administrator',
        term: 'Administrator',
        meaning: 'A keeper who invites members, gives roles and sets up the club.',
      },
      {
        id: 'private',
        term: 'Private',
        meaning:
          'Seen by its keeper and the registrars alone. A private animal still counts in everybody’s figures, without a name.',
      },
      {
        id: 'plan',
        term: 'Plan',
        meaning:
          'Proposed pairings of a line, reckoned under conditions that are kept with it. It pairs nobody by itself.',
      },
      {
        id: 'species-profile',
        term: 'Species profile',
        meaning:
          'What is usual for a species: days to hatching, size, age at breeding, each with its source. Outside of it the register warns; it never forbids.',
      },
      {
        id: 'transfer',
        term: 'Transfer',
        meaning: 'Animals that pass to another keeper. The record itself changes hands once the other accepts.',
      },
      {
        id: 'provenance-sheet',
        term: 'Provenance sheet',
        meaning:
          'What the register signs for animals that leave: who they are, their label as far as papers carry it, their ancestors. It is no permit and replaces none.',
      },
      {
        id: 'journal',
        term: 'Journal',
        meaning:
          'The record of every change. Each entry is sealed with the one before it, so none can be altered unseen.',
      },
    ],
  },
];
