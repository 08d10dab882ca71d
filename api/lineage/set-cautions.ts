import type { SetMeasures } from './kernel/set-measures.ts';
import type { SetDepthView } from './lineage-set.view.ts';
import { say } from '../platform/say.ts';

/** Complete generations below which a low F says little. */
const SHALLOW = 2;
/** Part of the gene pool from parents that nobody knows, or founders of unknown origin, from which on it is said. */
const UNKNOWN_PART = 0.1;

/** What must stand beside the figures of a set, in plain sentences (section 6 of the lineage maths). */
export function setCautions({ animals, inbreeding, contributions }: SetMeasures, depth: SetDepthView): string[] {
  if (animals === 0) return [say`No animal meets these filters, or none that you may see.`];
  const cautions: string[] = [];
  const unknown = animals - inbreeding.animals;
  if (unknown === animals)
    cautions.push(say`Nothing is known of the origin of any of these animals: no inbreeding can be told, not 0.`);
  else if (unknown > 0)
    cautions.push(
      say`Nothing is known of the origin of ${unknown} of ${animals} animals; they are left out of inbreeding and count as unrelated in kinship.`,
    );
  if (unknown < animals && (depth.generationEquivalents ?? 0) < SHALLOW)
    cautions.push(
      say`The pedigrees reach back fewer than two complete generations on average: relatives further back would not show.`,
    );
  const unseen = contributions.filter(({ kind }) => kind !== 'source').reduce((sum, { share }) => sum + share, 0);
  if (unknown < animals && unseen >= UNKNOWN_PART)
    cautions.push(
      say`${Math.round(100 * unseen)} % of the gene pool comes from founders of unknown origin and from unknown parents, who count as unrelated to everybody.`,
    );
  cautions.push(say`Founders count as unrelated unless their source states a base kinship.`);
  return cautions;
}
