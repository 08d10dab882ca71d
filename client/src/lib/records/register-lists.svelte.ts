import { api } from '../api/client.ts';
import type { ClutchItem, Line, Page, Source, Species } from '../api/types.ts';

/** The species, lines, sources and clutches that a form offers, newest clutches first; up to 200 of each. */
export class RegisterLists {
  species = $state.raw<Species[]>([]);
  lines = $state.raw<Line[]>([]);
  sources = $state.raw<Source[]>([]);
  clutches = $state.raw<ClutchItem[]>([]);

  /** Reads the lists. Throws `ProblemError`. */
  async read(): Promise<void> {
    const query = { limit: 200 };
    const [species, lines, sources, clutches] = await Promise.all([
      api.get<Page<Species>>('/species', { query }),
      api.get<Page<Line>>('/lines', { query }),
      api.get<Page<Source>>('/sources', { query }),
      api.get<Page<ClutchItem>>('/clutches', { query }),
    ]);
    this.species = species.items;
    this.lines = lines.items;
    this.sources = sources.items;
    this.clutches = clutches.items;
  }

  /** Lines of one species. */
  linesOf(speciesId: string): Line[] {
    return this.lines.filter((line) => line.speciesId === speciesId);
  }
}
