/** A stretch of time that needs at least so many pixels on the page. */
export interface Need {
  from: number;
  to: number;
  pixels: number;
}

export interface Tick {
  year: number;
  y: number;
  /** Every fifth labelled tick is written in bold and ruled across. */
  strong: boolean;
}

/** Time to page: strictly rising, the same for every node, so that the ruler beside the chart is true. */
export interface TimeScale {
  y(year: number): number;
  height: number;
  ticks: Tick[];
}

const steps = [1, 2, 5, 10, 20, 25, 50, 100, 200, 500];

/**
 * Builds the vertical scale from `first` to `last` (decimal years). Years are `perYear` pixels tall; where events stand
 * too close for their drawings, the years between them are made taller, so that no node leaves its true date.
 */
export function timeScale(first: number, last: number, perYear: number, needs: Need[]): TimeScale {
  const span = Math.max(last - first, 0.5);
  const bins = Math.min(4800, Math.max(12, Math.ceil(span * 12)));
  const width = span / bins;
  const tall = new Float64Array(bins).fill(perYear * width);
  const binOf = (year: number) => Math.min(bins - 1, Math.max(0, Math.floor((year - first) / width)));
  for (const need of [...needs].sort((a, b) => a.to - a.from - (b.to - b.from) || a.from - b.from)) {
    // whole bins between the two only: of the first one an unknown part lies above
    const from = binOf(need.from);
    const high = Math.max(from + 1, binOf(need.to));
    const low = high - from > 1 ? from + 1 : from;
    let sum = 0;
    for (let bin = low; bin < high; bin++) sum += tall[bin] ?? 0;
    const missing = need.pixels - sum;
    if (missing > 0) for (let bin = low; bin < high; bin++) tall[bin] = (tall[bin] ?? 0) + missing / (high - low);
  }
  const tops = new Float64Array(bins + 1);
  for (let bin = 0; bin < bins; bin++) tops[bin + 1] = (tops[bin] ?? 0) + (tall[bin] ?? 0);
  const height = tops[bins] ?? 0;
  const y = (year: number) => {
    const place = (year - first) / width;
    if (place <= 0) return place * perYear * width;
    if (place >= bins) return height + (place - bins) * perYear * width;
    const bin = Math.floor(place);
    return (tops[bin] ?? 0) + (tall[bin] ?? 0) * (place - bin);
  };
  return { y, height, ticks: ticks(first, last, y) };
}

/** Labelled years of a ruler between two years, as many as have room. */
export function ticks(first: number, last: number, y: (year: number) => number): Tick[] {
  const perYear = (y(last) - y(first)) / Math.max(last - first, 1);
  const step = steps.find((one) => one * perYear >= 26) ?? 1000;
  const found: Tick[] = [];
  for (let year = Math.ceil(first / step) * step; year <= last; year += step) {
    const at = y(year);
    const previous = found[found.length - 1];
    const strong = year % (step * 5) === 0;
    if (previous && at - previous.y < 15) {
      if (strong && !previous.strong) found.pop();
      else continue;
    }
    found.push({ year, y: at, strong });
  }
  return found;
}
