import { standings, type LabelKind, type Standing } from '../../shared/vocabulary.ts';
import type { ClaimStanding } from './standing-of-claim.ts';

/** A share of an animal's expected genome, 0 to 1, under one standing. */
export interface StandingShare {
  readonly standing: Standing;
  readonly share: number;
}

/** A label that a line gives its animals. */
export interface Label {
  readonly name: string;
  readonly kind: LabelKind;
}

/** What a claim says, as it is compared, and how well it stands. Claims that were withdrawn are none. */
export interface LabelClaim {
  readonly value: string;
  /** `foldedLabel` of the value. */
  readonly folded: string | null;
  readonly standing: ClaimStanding['standing'];
}

/** The label that a source came under, as a claim: somebody's word. Null where it came under none. */
export function claimReceived(labelAsReceived: string | null): LabelClaim | null {
  const folded = foldedLabel(labelAsReceived);
  return labelAsReceived === null || folded === null
    ? null
    : { value: labelAsReceived.trim(), folded, standing: 'stated' };
}

/**
 * What is said of the animals of a source: the label it came under, unless one of its claims names it, and its claims.
 *
 * @param received as `claimReceived` gives it
 */
export function saidOfSource(received: LabelClaim | null, claims: readonly LabelClaim[]): readonly LabelClaim[] {
  if (received === null || claims.some(({ folded }) => folded === received.folded)) return claims;
  return [received, ...claims];
}

/**
 * How well a founder stands under a label, by all that is said of it and of its source:
 *
 * - where something names the label, the best standing of what names it; `disputed` if any of it is;
 * - else, under a label that names a place or a trade name, the best standing of what is said, but no better than `stated`: papers that
 *   name another place do not carry this one;
 * - under a cross, no label or none of its own, the best standing of what is said.
 *
 * `unknown` where nothing is said.
 */
export function standingUnder(label: Label | null, said: readonly LabelClaim[]): Standing {
  const naming = claimsNaming(label?.name ?? null, said);
  if (naming.length > 0) return isDisputed(naming) ? 'disputed' : bestOf(naming);
  const best = bestOf(said);
  const claimsOrigin = label?.kind === 'locality' || label?.kind === 'trade-name';
  return claimsOrigin && isTraceable(best) ? 'stated' : best;
}

/** Whether a founder traces a label: something said of it names the label, none of that is disputed, and it is `corroborated` or better. */
export function tracesLabel(label: string | null, said: readonly LabelClaim[]): boolean {
  const naming = claimsNaming(label, said);
  return naming.length > 0 && !isDisputed(naming) && isTraceable(bestOf(naming));
}

/** What names a label; nothing does where there is none. */
export function claimsNaming<Claim extends LabelClaim>(label: string | null, said: readonly Claim[]): Claim[] {
  const folded = foldedLabel(label);
  return folded === null ? [] : said.filter((claim) => claim.folded === folded);
}

/**
 * The label that a founder counts under beside others: the one asked about where a claim, or failing every better paper the label it
 * came under, names it; else the one that stands best, what it came under before what was said of it later. Null where nothing is said.
 *
 * @param said as `saidOfSource` has it, what it came under first among equals
 */
export function labelCarried(label: string | null, said: readonly LabelClaim[]): LabelClaim | null {
  const best = [...said].sort((one, other) => rank(one.standing) - rank(other.standing))[0] ?? null;
  const [own] = claimsNaming(label, said);
  // somebody's word for this label does not outweigh papers that name another
  if (own && (rank(own.standing) <= rank('corroborated') || best === null || !isTraceable(best.standing))) return own;
  return best;
}

const isDisputed = (claims: readonly LabelClaim[]): boolean => claims.some(({ standing }) => standing === 'disputed');

const rank = (standing: Standing): number => standings.indexOf(standing);

function bestOf(claims: readonly LabelClaim[]): Standing {
  const best = Math.min(rank('unknown'), ...claims.map(({ standing }) => rank(standing)));
  return standings[best] ?? 'unknown';
}

/** Whether a standing is good enough to trace a label by: `corroborated` or better. */
export function isTraceable(standing: Standing): boolean {
  return rank(standing) <= rank('corroborated');
}

/** The weakest standing that carries any share; `unknown` where none does. */
export function weakestStanding(shares: readonly StandingShare[]): Standing {
  const weakest = Math.max(-1, ...shares.filter(({ share }) => share > 0).map(({ standing }) => rank(standing)));
  return standings[weakest] ?? 'unknown';
}

/** Adds shares up by standing, best first; a standing without a share is left out. */
export function sharesByStanding(shares: readonly StandingShare[]): StandingShare[] {
  return standings.flatMap((standing) => {
    const share = shares.reduce((sum, part) => (part.standing === standing ? sum + part.share : sum), 0);
    return share > 0 ? [{ standing, share }] : [];
  });
}

/** A label as it is compared: without regard to case and to spaces at the ends or in a row; null for an empty one. */
export function foldedLabel(label: string | null): string | null {
  const folded = (label ?? '').normalize('NFC').trim().replace(/\s+/gu, ' ').toLocaleLowerCase('en');
  return folded === '' ? null : folded;
}
