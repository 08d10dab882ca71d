import { answerLayouts } from '../layout-worker.ts';
import { layoutAncestors } from './ancestor-layout.ts';
import type { AncestorQuestion } from './layout-apart.ts';
import type { PedigreeView } from './pedigree-view.ts';

answerLayouts(({ view, leastWidth }: AncestorQuestion) => layoutAncestors(view, leastWidth));

// What has run once runs faster, and the worker starts while the service still looks the pedigree up.
layoutAncestors(filledPedigree(64));

/** An invented animal whose ancestors fill every place: number n has the parents 2n and 2n + 1, and hatched from the clutch -n. */
function filledPedigree(animals: number): PedigreeView {
  const view: PedigreeView = { root: '1', nodes: [], edges: [], truncated: false };
  for (let at = 1; at < animals; at++) {
    const name = { id: `${at}`, number: `${at}`, sex: at % 2 ? 'female' : 'male', status: 'alive' } as const;
    view.nodes.push({ ...name, kind: 'individual', unknownOrigin: false, hasMoreAncestors: false, standings: [] });
    if (2 * at >= animals) continue;
    const [clutch, laid] = [String(-at), `${2100 - at}-05-01`];
    view.nodes.push({ kind: 'clutch', id: clutch, title: clutch, earliest: laid, latest: laid });
    view.edges.push({ from: clutch, to: `${at}`, kind: 'young' });
    view.edges.push({ from: `${2 * at}`, to: clutch, kind: 'parent', role: 'sire' });
    view.edges.push({ from: `${2 * at + 1}`, to: clutch, kind: 'parent', role: 'dam' });
  }
  return view;
}
