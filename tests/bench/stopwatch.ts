/** What a task takes: the median of some runs after one that warms up the compiler. */
export function medianOf<Result>(task: () => Result, runs = 7): { milliseconds: number; result: Result } {
  let result = task();
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    result = task();
    times.push(performance.now() - start);
  }
  return { milliseconds: median(times), result };
}

/** The middle one of some values. */
export function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;
}
