import { api } from '../api/client.ts';
import type { ClutchItem, Line, Source, Species } from '../api/types.ts';

/** The species, lines, sources and clutches that a form offers, newest clutches first; of those the last thousand. */
export class RegisterLists {
  species = $state.raw<Species[]>([]);
  lines = $state.raw<Line[]>([]);
  sources = $state.raw<Source[]>([]);
  clutches = $state.raw<ClutchItem[]>([]);

  /** Reads the lists. Throws `ProblemError`. */
  async read(): Promise<void> {
    [this.species, this.lines, this.sources, this.clutches] = await Promise.all([
      api.all<Species>('/species'),
      api.all<Line>('/lines'),
      api.all<Source>('/sources'),
      api.all<ClutchItem>('/clutches', {}, 1000),
    ]);
  }

  /** Lines of one species. */
  linesOf(speciesId: string): Line[] {
    return this.lines.filter((line) => line.speciesId === speciesId);
  }
}
