import type { ClutchStage } from '$shared/vocabulary.ts';
import { word } from '../words/word.ts';

/** How far a clutch is, as a list says it. */
export const stageWords: Readonly<Record<ClutchStage, string>> = {
  egg: 'in the egg',
  water: 'in the water',
  out: 'out of the water',
  ended: word('ended'),
};
