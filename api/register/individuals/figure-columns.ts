import type { SortColumn } from '../keyset.ts';
import type { FigureSort } from './individual.dto.ts';

/** Columns of the table individual_figures, which the lineage keeps (individual_figures_inbreeding_index and its like). */
export const figureColumns: Readonly<Record<FigureSort, SortColumn>> = {
  inbreeding: { sql: 'inbreeding', type: 'double precision' },
  depth: { sql: 'depth', type: 'integer' },
  meanKinship: { sql: 'mean_kinship', type: 'double precision' },
  tracedShare: { sql: 'traced_share', type: 'double precision' },
};
