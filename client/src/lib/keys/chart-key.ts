import { chart, type ChartKey } from './actions/chart.ts';
import { keysOf } from './key-names.ts';

const byKeys: ReadonlyMap<string, ChartKey> = new Map(
  (Object.keys(chart) as ChartKey[]).map((name) => [chart[name].keys, name]),
);

/** What a stroke means on a chart that has the focus, as the registry says; null where it means nothing there. */
export function chartKey(event: Parameters<typeof keysOf>[0]): ChartKey | null {
  const keys = keysOf(event);
  // plus, without Shift on many keyboards
  return byKeys.get(keys === '=' ? '+' : keys) ?? null;
}
