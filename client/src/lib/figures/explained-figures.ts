/** Figures that the screens explain, as the help page groups them; each is also the anchor of its section there. */
export const figureGroups = [
  {
    title: 'Inbreeding',
    names: [
      'inbreeding',
      'inbreeding-range',
      'partial-inbreeding',
      'ancestral-inbreeding',
      'mean-inbreeding',
      'increase',
      'effective-size',
    ],
  },
  {
    title: 'Kinship, diversity and founders',
    names: [
      'kinship',
      'mean-kinship',
      'gene-diversity',
      'added-diversity',
      'founder-genomes',
      'effective-founders',
      'effective-ancestors',
      'shares',
      'living-worth',
      'genes-kept',
      'traced-share',
    ],
  },
  {
    title: 'How far the pedigree reaches',
    names: ['depth', 'completeness', 'completeness-index', 'filial-generation'],
  },
] as const;

export type ExplainedFigure = (typeof figureGroups)[number]['names'][number];

export const explainedFigures: readonly ExplainedFigure[] = figureGroups.flatMap(
  ({ names }): readonly ExplainedFigure[] => names,
);
