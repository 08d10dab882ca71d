import { api } from '$lib/api/client.ts';
import { ProblemError } from '$lib/api/problem.ts';
import type { Individual, Lineage } from '$lib/api/types.ts';
import { readPage } from '$lib/people/read-page.ts';
import type { PageLoad } from './$types';

export interface AnimalPage {
  animal: Individual;
  /** What the pedigree says of it, or why it did not come: the record is of use without it. */
  lineage: Lineage | ProblemError;
}

export const load: PageLoad = ({ params, depends }): Promise<AnimalPage> => {
  depends('record:individual');
  return readPage(async () => {
    const path = `/individuals/${encodeURIComponent(params.id)}`;
    // both at once, so that the figures stand there from the beginning, and the chart is drawn with nothing else to do
    const [animal, lineage] = await Promise.all([
      api.get<Individual>(path),
      api.get<Lineage>(`${path}/lineage`).catch((problem: unknown) => {
        if (problem instanceof ProblemError) return problem;
        throw problem;
      }),
    ]);
    return { animal, lineage };
  });
};
