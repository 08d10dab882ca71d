/** Sizes of a line over time, in units of its plane: CSS pixels where it is drawn at its natural size. */
export const sizes = {
  /** From the middle of one young to the middle of the next. */
  pitch: 11,
  /** Half the side of a young's symbol. */
  symbol: 4,
  /** Radius of the ring of a clutch. */
  ring: 3,
  /** From the ring down to the bar, the height of the bar, and from the ring to the middle of the first row of young. */
  toBar: 5,
  bar: 7,
  toYoung: 19,
  /** Half the height of a row's symbols, and from row to row. */
  row: 11,
  /** Most young beside each other: of a clutch, and of a source. */
  abreast: 12,
  foundersAbreast: 20,
  /** Least width of a family. */
  narrowest: 20,
  /** Free space between families side by side, and one above the other. */
  gap: 10,
  below: 8,
  /** Room above the founders of a source for its bar. */
  bracket: 16,
  /** Room above the first family, for the name of its source. */
  head: 44,
  /** Height of the lanes in which the order across is sought. */
  lane: 42,
} as const;
