/** One box in a lane: where it would like to stand, and how wide it is with its free space. */
export interface Standing {
  readonly box: number;
  readonly wish: number;
  readonly width: number;
}

/**
 * Places boxes of one lane side by side, in the order of their wishes, so that none overlap and the sum of squared distances to their
 * wishes is least (isotonic regression by pooling neighbours; Ayer et al. 1955).
 *
 * @param boxes sorted by wish
 * @param place takes the middle of each box
 */
export function settleLane(boxes: readonly Standing[], place: (box: number, middle: number) => void): void {
  const starts: number[] = [];
  const sums: number[] = [];
  const counts: number[] = [];
  const offsets = new Float64Array(boxes.length);
  let offset = 0;
  boxes.forEach(({ wish, width }, at) => {
    const before = boxes[at - 1];
    if (before) offset += (before.width + width) / 2;
    offsets[at] = offset;
    starts.push(at);
    sums.push(wish - offset);
    counts.push(1);
    // a pool that would stand left of the one before it becomes one with it
    for (let last = starts.length - 1; last > 0; last--) {
      const [mine, other] = [(sums[last] ?? 0) / (counts[last] ?? 1), (sums[last - 1] ?? 0) / (counts[last - 1] ?? 1)];
      if (mine >= other) break;
      sums[last - 1] = (sums[last - 1] ?? 0) + (sums.pop() ?? 0);
      counts[last - 1] = (counts[last - 1] ?? 0) + (counts.pop() ?? 0);
      starts.pop();
    }
  });
  starts.forEach((start, pool) => {
    const base = (sums[pool] ?? 0) / (counts[pool] ?? 1);
    for (let at = start; at < start + (counts[pool] ?? 0); at++) {
      const box = boxes[at];
      if (box) place(box.box, base + (offsets[at] ?? 0));
    }
  });
}
