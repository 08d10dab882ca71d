import {
  evidenceKinds,
  type Bearing,
  type EvidenceKind,
  type EvidenceNames,
  type Review,
  type Standing,
} from '../../shared/vocabulary.ts';

/** A piece of evidence as far as the standing of its claim depends on it. */
export interface Bears {
  readonly id: string;
  readonly kind: EvidenceKind;
  readonly bearing: Bearing;
  readonly names: EvidenceNames;
  readonly issuedBy: string | null;
  /** Evidence that it only repeats. */
  readonly repeatsId: string | null;
  readonly review: Review;
  readonly isWithdrawn: boolean;
}

/** How well a claim stands, and the evidence that decides it. */
export interface ClaimStanding {
  readonly standing: Exclude<Standing, 'unknown'>;
  readonly decidedBy: readonly string[];
}

/**
 * How well a claim stands by its evidence (the rules of the domain): evidence counts once it is accepted and while it is not withdrawn.
 * One contradiction makes it disputed; else one primary document that names it, documented; else two secondary documents that are
 * independent of each other, corroborated; else one of them, stated; else looks alone, by-looks; else it is somebody's word.
 */
export function standingOfClaim(evidence: readonly Bears[]): ClaimStanding {
  const counted = evidence.filter(({ review, isWithdrawn }) => review === 'accepted' && !isWithdrawn);
  const against = counted.filter(({ bearing }) => bearing === 'contradicts');
  if (against.length > 0) return decided('disputed', against);
  // a paper that names only the country of export carries no place
  const supports = counted.filter(({ names }) => names === 'claim');
  const ofRank = (rank: string): Bears[] => supports.filter(({ kind }) => evidenceKinds[kind] === rank);
  const primary = ofRank('primary');
  if (primary.length > 0) return decided('documented', primary);
  const secondary = ofRank('secondary');
  if (independent(secondary, evidence) >= 2) return decided('corroborated', secondary);
  if (secondary.length > 0) return decided('stated', secondary);
  const looks = ofRank('appearance');
  return looks.length > 0 ? decided('by-looks', looks) : decided('stated', []);
}

const decided = (standing: ClaimStanding['standing'], by: readonly Bears[]): ClaimStanding => ({
  standing,
  decidedBy: by.map(({ id }) => id),
});

/**
 * How many independent voices documents are. Those of one issuer are one voice, and so is a document with what it repeats, whether
 * that was accepted or not, and with what that repeats in turn. Of papers without an issuer nobody knows that they are independent:
 * together they are one voice. Evidence that none of the documents goes back to joins nothing, so what waits for its review, or was
 * rejected, changes no standing.
 */
export function independent(documents: readonly Bears[], all: readonly Bears[]): number {
  const known = new Map(all.map((piece) => [piece.id, piece]));
  const voices = new Map<string, string>();
  const voiceOf = (key: string): string => {
    let voice = key;
    for (let next = voices.get(voice); next !== undefined; next = voices.get(voice)) voice = next;
    return voice;
  };
  const join = (one: string, other: string): void => {
    const [first, second] = [voiceOf(one), voiceOf(other)];
    if (first !== second) voices.set(first, second);
  };
  const joined = new Set<string>();
  for (const document of documents) {
    let piece: Bears | undefined = document;
    while (piece && !joined.has(piece.id)) {
      joined.add(piece.id);
      join(piece.id, `issuer ${foldedName(piece.issuedBy) ?? ''}`);
      const repeated: Bears | undefined = piece.repeatsId === null ? undefined : known.get(piece.repeatsId);
      if (repeated) join(piece.id, repeated.id);
      piece = repeated;
    }
  }
  return new Set(documents.map(({ id }) => voiceOf(id))).size;
}

/** A name as it is compared: without regard to case and spaces; null for an empty one. */
function foldedName(name: string | null): string | null {
  const folded = (name ?? '').normalize('NFC').trim().replace(/\s+/gu, ' ').toLocaleLowerCase('en');
  return folded === '' ? null : folded;
}
