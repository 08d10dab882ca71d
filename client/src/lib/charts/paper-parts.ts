/** A stretch of a drawing along one of its sides, in its pixels. */
export interface Part {
  readonly from: number;
  readonly to: number;
}

/**
 * Cuts a side of a drawing into parts for paper, each as long as it can be within a bound. Every box, such as a symbol with its words, is
 * whole in one part; where no cut is free of them, the next part begins a little before the end of the last, as the sheets of a map do.
 *
 * @param boxes where what must stay whole begins and ends along that side; each shorter than half of `most`
 * @param most greatest length of a part, in pixels
 */
export function partsOf(boxes: readonly Part[], { from: begin, to: end }: Part, most: number): Part[] {
  const parts: Part[] = [];
  for (let from = begin; ;) {
    const bound = from + most;
    if (bound >= end) return [...parts, { from, to: end }];
    const whole = boxes.filter((box) => box.from >= from && box.to <= bound);
    const to = whole.reduce((far, box) => Math.max(far, box.to), from + most / 2);
    parts.push({ from, to });
    from = boxes.reduce((near, box) => (box.to > to && box.from > from ? Math.min(near, box.from) : near), to);
  }
}
