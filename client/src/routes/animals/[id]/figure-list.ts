import type { Lineage } from '$lib/api/types.ts';
import { counted, decimals, percent, percentRange } from '$lib/ui/figures.ts';
import { word } from '$lib/words/word.ts';

export type FigureName = 'depth' | 'filial' | 'kinship' | 'traced' | 'ancestral' | 'inbreeding';

/** One figure of the strip: its name, what is printed large, and what it rests on. */
export interface Figure {
  name: FigureName;
  words: string;
  value: string;
  rests: string[];
}

/** The figures that the API gives for an animal; what nobody can know is left out, not printed as zero. */
export function figuresOf(lineage: Lineage): Figure[] {
  const { inbreeding, label } = lineage;
  const figures: Figure[] = [
    {
      name: 'depth',
      words: 'pedigree depth',
      value: String(lineage.depth),
      rests: [
        ...(lineage.depth === 0
          ? ['no parents recorded']
          : [
              lineage.fullDepth > 0 ? `full to generation ${lineage.fullDepth};` : 'no generation complete;',
              `${decimals(lineage.generationEquivalents, 2)} equivalents`,
            ]),
      ],
    },
  ];
  if (lineage.filialGeneration !== null)
    figures.push({
      name: 'filial',
      words: 'filial generation',
      value: lineage.filialGeneration === 0 ? word('wild') : `F${lineage.filialGeneration}`,
      rests: ['by the least of its parents;', 'decides no permit'],
    });
  if (lineage.meanKinship !== null)
    figures.push({
      name: 'kinship',
      words: 'mean kinship',
      value: percent(lineage.meanKinship),
      rests: kinshipRests(lineage),
    });
  figures.push({
    name: 'traced',
    words: 'traced share',
    value: label.name === null ? 'no label' : percent(label.tracedShare.expected),
    rests: tracedRests(label),
  });
  if (lineage.ancestralInbreeding.recursion > 0)
    figures.push({
      name: 'ancestral',
      words: 'ancestral F',
      value: percent(lineage.ancestralInbreeding.recursion),
      rests: ancestralRests(lineage),
    });
  figures.push({
    name: 'inbreeding',
    words: 'inbreeding F',
    value: inbreeding.nothingKnown ? 'nothing known' : percent(inbreeding.expected),
    rests: inbreeding.nothingKnown
      ? ['no parents recorded']
      : lineage.depth === 0
        ? ['a founder: depth 0;', 'what its source assumes']
        : [`${percentRange(inbreeding.least, inbreeding.greatest)}; depth ${lineage.depth}`, ...unknownRests(lineage)],
  });
  return figures;
}

function tracedRests({ name, tracedShare }: Lineage['label']): string[] {
  if (name === null) return ['nothing to trace'];
  if (tracedShare.expected === 0) return ['no paper names', 'this label yet'];
  return [`at least ${percent(tracedShare.least)}`, 'with any parents'];
}

/** A mean kinship says something beside those of the line. */
function kinshipRests({ lineKinship }: Lineage): string[] {
  if (lineKinship === null) return ['with the living', 'of its line'];
  const { mean, rank, living } = lineKinship;
  return [
    `line ${percent(mean)};`,
    rank === null ? `${counted(living, ['animal', 'animals'])} alive` : `rank ${rank} of ${living}`,
  ];
}

/** The recursion is not the exact value; where that could be counted it stands beside it. */
function ancestralRests({ ancestralInbreeding: { exact } }: Lineage): string[] {
  return exact === null ? ['by a recursion;', 'it may differ'] : ['by a recursion;', `${percent(exact)} exactly`];
}

/** F counts an unknown parent as unrelated to everybody; that must stand beside it. */
function unknownRests({ depth, inbreeding: { bothParentsKnown } }: Lineage): string[] {
  if (depth === 0 || bothParentsKnown > 1 - 1e-9) return [];
  if (bothParentsKnown === 0) return ['one parent unknown, counted as unrelated'];
  return [`a parent unknown with ${percent(1 - bothParentsKnown)}`, 'and then counted as unrelated'];
}
