import { parentsFirst, type PedigreeGraph } from './pedigree-graph.ts';

/** When an animal came into the chart, in decimal years. `firm` false: placed by reasoning, not by a record. */
export interface EventTime {
  year: number;
  firm: boolean;
}

export interface EventTimes {
  /** Laying of each clutch in the view. */
  clutches: Map<string, EventTime>;
  /** For animals without a clutch: the date of their source, else of hatching, else a place above their young. */
  founders: Map<string, EventTime>;
  /** False when no date at all is known: then the years mean order only and no ruler is drawn. */
  dated: boolean;
}

const leastGap = 0.35;
const eggYears = 14 / 365;

/** A calendar date (YYYY-MM-DD, or a year, or year and month) as a decimal year; null when it is no date. */
export function decimalYear(date: string | null | undefined): number | null {
  const match = /^(-?\d{4})(?:-(\d{2}))?(?:-(\d{2}))?/.exec(date ?? '');
  if (!match) return null;
  return Number(match[1]) + (Number(match[2] ?? 1) - 1) / 12 + (Number(match[3] ?? 1) - 1) / 365.25;
}

interface Bounds {
  earliest?: string | null;
  latest?: string | null;
}

function middle(bounds: Bounds | undefined): EventTime | null {
  const from = decimalYear(bounds?.earliest);
  const to = decimalYear(bounds?.latest);
  if (from === null && to === null) return null;
  const year = from === null ? (to as number) : to === null ? from : (from + to) / 2;
  return { year, firm: from !== null && to !== null && to - from < 0.2 };
}

/** One thing that happens at a time (a clutch or a founder's arrival) and what comes before and after it. */
interface Event {
  time: EventTime | null;
  before: Event[];
  after: Event[];
}

/**
 * Gives every clutch and every founder a time. Recorded dates stand; vague ones give way inside the pedigree's order;
 * missing ones are spread evenly between what is above and what is below them.
 */
export function eventTimes(graph: PedigreeGraph): EventTimes {
  const clutches = new Map<string, Event>();
  const founders = new Map<string, Event>();
  const ordered: Event[] = [];
  for (const id of parentsFirst(graph)) {
    const birth = graph.birthClutch.get(id);
    if (birth === undefined) {
      const event: Event = { time: founderTime(graph, id), before: [], after: [] };
      founders.set(id, event);
      ordered.push(event);
    } else if (!clutches.has(birth)) {
      const event = clutchEvent(graph, birth, clutches, founders);
      clutches.set(birth, event);
      ordered.push(event);
    }
  }
  const dated = ordered.some((event) => event.time !== null);
  settle(ordered);
  gatherSources(graph, founders);
  const read = (events: Map<string, Event>) =>
    new Map([...events].map(([id, event]) => [id, event.time ?? { year: 0, firm: false }]));
  return { clutches: read(clutches), founders: read(founders), dated };
}

function founderTime(graph: PedigreeGraph, id: string): EventTime | null {
  const source = graph.sources.get(graph.sourceOf.get(id) ?? '');
  return middle(source) ?? middle(graph.individuals.get(id));
}

function clutchEvent(
  graph: PedigreeGraph,
  id: string,
  clutches: Map<string, Event>,
  founders: Map<string, Event>,
): Event {
  const young = (graph.youngOf.get(id) ?? []).map((one) => middle(graph.individuals.get(one)));
  const hatched = young.find((time) => time !== null);
  const time = middle(graph.clutches.get(id)) ?? (hatched ? { ...hatched, year: hatched.year - eggYears } : null);
  const event: Event = { time, before: [], after: [] };
  for (const link of graph.parentsOf.get(id) ?? []) {
    const above = clutches.get(graph.birthClutch.get(link.parent) ?? '') ?? founders.get(link.parent);
    if (!above) continue;
    event.before.push(above);
    above.after.push(event);
  }
  return event;
}

/** Median years from one generation to the next among dated pairs; two years where nothing is dated. */
function usualGap(events: Event[]): number {
  const gaps = events.flatMap((event) =>
    event.before.flatMap((above) => (above.time && event.time ? [event.time.year - above.time.year] : [])),
  );
  const sound = gaps.filter((gap) => gap > leastGap).sort((a, b) => a - b);
  return sound[Math.floor(sound.length / 2)] ?? 2;
}

function settle(events: Event[]): void {
  const gap = usualGap(events);
  // one that is dated by nobody above or below it is found by way of another's young or parents, in a later round
  while (spreadBetweenDated(events, gap));
  for (const event of events) event.time ??= { year: 0, firm: false };
  for (const event of [...events].reverse()) {
    const limit = Math.min(...event.after.map((one) => (one.time?.year ?? Infinity) - leastGap));
    if (event.time && !event.time.firm && event.time.year > limit) event.time = { year: limit, firm: false };
  }
  for (const event of events) {
    const limit = Math.max(...event.before.map((one) => (one.time?.year ?? -Infinity) + leastGap));
    if (event.time && event.time.year < limit) event.time = { year: limit, firm: false };
  }
}

/** Gives a time to what stands above or below something that has one; gives whether there was any. */
function spreadBetweenDated(events: Event[], gap: number): boolean {
  const above = new Map<Event, { year: number; steps: number }>();
  for (const event of events) {
    const over = event.before.flatMap((one) => above.get(one) ?? []);
    const nearest = over.sort((a, b) => b.year + b.steps * leastGap - (a.year + a.steps * leastGap))[0];
    if (event.time) above.set(event, { year: event.time.year, steps: 0 });
    else if (nearest) above.set(event, { year: nearest.year, steps: nearest.steps + 1 });
  }
  const below = new Map<Event, { year: number; steps: number }>();
  for (const event of [...events].reverse()) {
    const under = event.after.flatMap((one) => below.get(one) ?? []);
    const nearest = under.sort((a, b) => a.year - b.year || b.steps - a.steps)[0];
    if (event.time) below.set(event, { year: event.time.year, steps: 0 });
    else if (nearest) below.set(event, { year: nearest.year, steps: nearest.steps + 1 });
  }
  const found = events.filter((event) => !event.time && (above.has(event) || below.has(event)));
  for (const event of found) event.time = { year: between(above.get(event), below.get(event), gap), firm: false };
  return found.length > 0;
}

type Nearest = { year: number; steps: number } | undefined;

function between(above: Nearest, below: Nearest, gap: number): number {
  if (above && below)
    return above.year + ((below.year - above.year) * above.steps) / Math.max(1, above.steps + below.steps);
  if (above) return above.year + above.steps * gap;
  if (below) return below.year - below.steps * gap;
  return 0;
}

/** Founders of one undated source arrive together: at the earliest place that any of them needs. */
function gatherSources(graph: PedigreeGraph, founders: Map<string, Event>): void {
  for (const ids of graph.foundersOf.values()) {
    const events = ids.flatMap((id) => founders.get(id) ?? []);
    const year = Math.min(...events.map((event) => event.time?.year ?? Infinity));
    for (const event of events) event.time = { year, firm: event.time?.firm ?? false };
  }
}
