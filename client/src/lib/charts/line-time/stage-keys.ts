import type { ChartKey } from '$lib/keys/actions/chart.ts';
import { chartKey } from '$lib/keys/chart-key.ts';
import type { LineView } from './line-view.svelte.ts';

/** What the keys do while the stage has the focus; gives whether the key meant something here. */
export function stageKey(view: LineView, event: KeyboardEvent, open: () => void): boolean {
  const key = chartKey(event);
  if (key === null) return false;
  const walk = (): unknown => view.step(key);
  const does: Partial<Record<ChartKey, () => unknown>> = {
    ...{ stepUp: walk, stepDown: walk, stepLeft: walk, stepRight: walk },
    lookUp: () => view.panStep(0, -1),
    lookDown: () => view.panStep(0, 1),
    lookLeft: () => view.panStep(-1, 0),
    lookRight: () => view.panStep(1, 0),
    comeCloser: () => view.zoomStep(true),
    goFurther: () => view.zoomStep(false),
    seeWhole: () => view.seeWhole(),
    toBeginning: () => {
      view.seeWhole();
      view.pick(null);
    },
    openHere: open,
    letAnimalGo: () => view.pick(null),
  };
  const doing = does[key];
  if (!doing || (key === 'letAnimalGo' && view.picked < 0)) return false;
  doing();
  return true;
}
