import { api } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type { Individual, Lineage } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

/** What the pedigree says of an animal, or why it did not come: the record is of use without it. */
export type Figures = Lineage | ProblemError;

export interface AnimalPage {
  animal: Individual;
  /** Still to come where they take long. */
  figures: Figures | Promise<Figures>;
}

/** So long the record waits for its figures, ms, so that both are drawn at once. */
const together = 500;

export const load: PageLoad = ({ params, depends }): Promise<AnimalPage> => {
  depends('record:individual');
  return readPage(async () => {
    const path = `/individuals/${encodeURIComponent(params.id)}`;
    // both at once, so that the figures stand there from the beginning, and the chart is drawn with nothing else to do
    const figures = api.get<Lineage>(`${path}/lineage`).catch((problem: unknown) => {
      if (problem instanceof ProblemError) return problem;
      throw problem;
    });
    const animal = await api.get<Individual>(path);
    const late = new Promise<null>((resolve) => setTimeout(() => resolve(null), together));
    return { animal, figures: (await Promise.race([figures, late])) ?? figures };
  });
};
