/**
 * Places things on a line in the given order, as near to their wishes as possible (least sum of squares, each times its weight), with at
 * least `distances[i]` between thing i and thing i + 1. Pool-adjacent-violators; exact, linear time.
 */
export function separate(
  wishes: ArrayLike<number>,
  distances: ArrayLike<number>,
  weights?: ArrayLike<number>,
): Float64Array {
  const count = wishes.length;
  const placed = new Float64Array(count);
  // blocks of things that touch: sum of their wishes, each moved to where the first of all would stand; weight; first thing
  const sums = new Float64Array(count);
  const heft = new Float64Array(count);
  const firsts = new Int32Array(count);
  let blocks = 0;
  let offset = 0;
  for (let index = 0; index < count; index++) {
    placed[index] = offset;
    const own = weights?.[index] ?? 1;
    let sum = ((wishes[index] ?? 0) - offset) * own;
    let weight = own;
    let first = index;
    for (; blocks > 0; blocks--) {
      const sumBefore = sums[blocks - 1] ?? 0;
      const weightBefore = heft[blocks - 1] ?? 1;
      if (sumBefore / weightBefore <= sum / weight) break;
      sum = sumBefore + sum;
      weight = weightBefore + weight;
      first = firsts[blocks - 1] ?? 0;
    }
    sums[blocks] = sum;
    heft[blocks] = weight;
    firsts[blocks] = first;
    blocks++;
    offset += distances[index] ?? 0;
  }
  for (let block = 0; block < blocks; block++) {
    const end = block + 1 < blocks ? (firsts[block + 1] ?? count) : count;
    for (let index = firsts[block] ?? 0; index < end; index++)
      placed[index] = (sums[block] ?? 0) / (heft[block] ?? 1) + (placed[index] ?? 0);
  }
  return placed;
}
