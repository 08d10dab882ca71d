import { standings, type Standing } from '../../shared/vocabulary.ts';

/** A share of an animal's expected genome, 0 to 1, under one standing. */
export interface StandingShare {
  readonly standing: Standing;
  readonly share: number;
}

/**
 * How well the label of a source stands. While there are no claims and no evidence it is somebody's word, or nothing at all.
 */
export function standingOfSource(source: { readonly labelAsReceived: string | null }): Standing {
  return foldedLabel(source.labelAsReceived) === null ? 'unknown' : 'stated';
}

/** Whether a standing is good enough to trace a label by: `corroborated` or better. */
export function isTraceable(standing: Standing): boolean {
  return standings.indexOf(standing) <= standings.indexOf('corroborated');
}

/**
 * Whether founders of a source trace a label: their own label is the same, and it stands well enough. Nothing traces a label
 * that is not there.
 */
export function tracesLabel(source: { readonly labelAsReceived: string | null }, label: string | null): boolean {
  const folded = foldedLabel(label);
  return folded !== null && isTraceable(standingOfSource(source)) && foldedLabel(source.labelAsReceived) === folded;
}

/** The weakest standing that carries any share; `unknown` where none does. */
export function weakestStanding(shares: readonly StandingShare[]): Standing {
  const weakest = Math.max(
    -1,
    ...shares.filter(({ share }) => share > 0).map(({ standing }) => standings.indexOf(standing)),
  );
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
