import type { Action } from '../action.ts';

const onChart = (keys: string, words: string) => ({ where: 'chart', keys, words, isMove: true }) as const;

/** What keys do on a chart or a grid that has the focus; the chart does it, by `chartKey`. */
export const chart = {
  stepUp: onChart('ArrowUp', 'To a parent; in a grid to the row above'),
  stepDown: onChart('ArrowDown', 'To the young; in a grid to the row below'),
  stepLeft: onChart('ArrowLeft', 'To the sibling or the next animal at the left'),
  stepRight: onChart('ArrowRight', 'To the sibling or the next animal at the right'),
  toBeginning: onChart(
    'Home',
    'To the animal or the year that the chart begins with; in a grid to the first of the row',
  ),
  toEnd: onChart('End', 'To the last year; in a grid to the last of the row'),
  openHere: onChart('Enter', 'Open the animal or the pair, or list the young that stand as a number'),
  drawYoung: onChart('Space', 'Draw the young of the animal, or fold them'),
  letAnimalGo: onChart('Escape', 'Let go of the animal on a line over time'),
  comeCloser: onChart('+', 'Come closer'),
  goFurther: onChart('-', 'Go further away'),
  seeWhole: onChart('0', 'See the whole line'),
  lookUp: onChart('Shift+ArrowUp', 'Look further up'),
  lookDown: onChart('Shift+ArrowDown', 'Look further down'),
  lookLeft: onChart('Shift+ArrowLeft', 'Look further left'),
  lookRight: onChart('Shift+ArrowRight', 'Look further right'),
} satisfies Record<string, Action>;

export type ChartKey = keyof typeof chart;
