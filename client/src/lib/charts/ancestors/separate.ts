/**
 * Places things on a line in the given order, as near to their wishes as possible (least sum of squares, each times its weight), with at
 * least `distances[i]` between thing i and thing i + 1. Pool-adjacent-violators; exact, linear time.
 */
export function separate(wishes: number[], distances: number[], weights?: number[]): number[] {
  const blocks: { sum: number; weight: number; count: number }[] = [];
  let offset = 0;
  const offsets: number[] = [];
  wishes.forEach((wish, index) => {
    offsets.push(offset);
    const own = weights?.[index] ?? 1;
    blocks.push({ sum: (wish - offset) * own, weight: own, count: 1 });
    offset += distances[index] ?? 0;
    for (;;) {
      const last = blocks[blocks.length - 1];
      const before = blocks[blocks.length - 2];
      if (!last || !before || before.sum / before.weight <= last.sum / last.weight) break;
      before.sum += last.sum;
      before.weight += last.weight;
      before.count += last.count;
      blocks.pop();
    }
  });
  const placed: number[] = [];
  for (const block of blocks)
    for (let i = 0; i < block.count; i++) placed.push(block.sum / block.weight + (offsets[placed.length] ?? 0));
  return placed;
}
