/** Heights of the chart of descendants in CSS pixels: one place, so that layout and streams cannot drift apart. */
export const heights = {
  /** Of the first symbol. */
  top: 34,
  /** From the middle of a symbol to where its streams turn aside, below its share bar. */
  leave: 30,
  /** From there to where they are above their eggs, at least and at most: more where they go far. */
  bend: 36,
  mostBend: 96,
  /** From there to the egg: the words beside it. */
  aboveEgg: 18,
  /** From the egg to below those words, and to the symbols of its young. */
  words: 15,
  toYoung: 58,
  /** Below the last symbols: a share bar, and the words that draw more. */
  below: 58,
} as const;
