/** The sizes of the ancestor chart in CSS pixels: one place, so that layout and drawing cannot drift apart. */
export const measures = {
  /** Half the side of a symbol. */
  symbol: 9,
  /** Horizontal room of one animal: symbol and the text at its right. */
  pitch: 98,
  /** From the middle of a symbol to the right end of its text. */
  textRight: 84,
  textLeft: 15,
  /** From an egg down to the middle of the symbols of its young. */
  drop: 32,
  /** Room under the middle of a symbol: number and share bar. */
  below: 30,
  /** One more line under the bar, for a candidate parent's probability. */
  probability: 18,
  /** Room above a founder: the question mark of an unknown origin. */
  mark: 34,
  /** Room above a founder: the bracket and name of its source. */
  bracket: 50,
  /** From a parent's symbol to the egg of its young at least. */
  reach: 66,
  /** Width of the stream that is the whole genome of the root. */
  stream: 22,
  leastStream: 1.3,
  /** Height of the bands in which the order from left to right is sought. */
  band: 44,
  /** Free space between two things side by side. */
  gap: 9,
  /** The same between two long streams. */
  laneGap: 4,
  /** Height in which a long stream turns from the animal into its lane, and from the lane to the egg. */
  turn: 46,
  /** In a chart of rows: the usual height of a row with the streams below it, and the least width of a row. */
  rowPitch: 130,
  leastRow: 620,
  /** How much wider than high such a chart is meant to be. */
  aspect: 1.5,
  /** Height between two rows in which streams go aside. */
  leastBend: 34,
  mostBend: 150,
  ruler: 58,
  /** What of it stays in sight while a wide chart is moved. */
  keptRuler: 48,
  top: 14,
  right: 18,
  bottom: 34,
} as const;

/** Width of a stream that carries `share` (0 to 1) of the genome of the root. */
export function streamWidth(share: number): number {
  return Math.max(measures.leastStream, share * measures.stream);
}
