const round = (value: number): number => Math.round(value * 10) / 10;

/**
 * The outline of an animal's symbol, as an SVG path around a point: a circle of radius `r` for a female, a square for a male, a diamond
 * for one that is not sexed, each as large to the eye as the others.
 */
export function symbolOutline(sex: string, x: number, y: number, r: number): string {
  if (sex === 'female') return `M${round(x - r)} ${round(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;
  const half = round(r * (sex === 'male' ? 0.92 : 1.17));
  if (sex === 'male') return `M${round(x - half)} ${round(y - half)}h${2 * half}v${2 * half}h${-2 * half}z`;
  return `M${round(x)} ${round(y - half)}l${half} ${half}l${-half} ${half}l${-half} ${-half}z`;
}
