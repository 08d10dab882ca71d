import { eggOffset, memberOffset, type Item, type Link } from './chart-items.ts';
import { measures, streamWidth } from './measures.ts';

export interface Point {
  x: number;
  y: number;
}

/** One stream: from a parent down to an egg, or from an egg down to an animal. */
export interface Stream {
  key: string;
  from: string;
  to: string;
  kind: 'parent' | 'young';
  role: 'sire' | 'dam' | 'either' | null;
  /** 1 for a certain parent and for every young. */
  probability: number;
  /** Expected part of the root's genome that flows here, 0 to 1. */
  share: number;
  width: number;
  points: Point[];
  /** SVG path through the points, leaving and arriving straight down. */
  path: string;
}

/** A path through points from top to bottom: cubic pieces with vertical tangents, straight where x does not change. */
export function verticalPath(points: Point[]): string {
  const [first, ...rest] = points;
  if (!first) return '';
  let path = `M${round(first.x)} ${round(first.y)}`;
  let last = first;
  for (const point of rest) {
    if (Math.abs(point.x - last.x) < 0.05) path += `V${round(point.y)}`;
    else {
      const middle = (last.y + point.y) / 2;
      path += `C${round(last.x)} ${round(middle)} ${round(point.x)} ${round(middle)} ${round(point.x)} ${round(point.y)}`;
    }
    last = point;
  }
  return path;
}

function round(value: number): string {
  return String(Math.round(value * 10) / 10);
}

interface Ends {
  out: number;
  into: number;
}

/** Sideways offsets that lay streams leaving one animal, or meeting at one egg, side by side. */
function sideBySide(links: Link[], place: (link: Link) => number): Map<Link, number> {
  const sorted = [...links].sort((a, b) => place(a) - place(b) || (a.key < b.key ? -1 : 1));
  const total = sorted.reduce((sum, link) => sum + streamWidth(link.share), 0);
  const offsets = new Map<Link, number>();
  let at = -total / 2;
  for (const link of sorted) {
    const width = streamWidth(link.share);
    offsets.set(link, at + width / 2);
    at += width;
  }
  return offsets;
}

function grouped(links: Link[], key: (link: Link) => string): Link[][] {
  const groups = new Map<string, Link[]>();
  for (const link of links) groups.set(key(link), [...(groups.get(key(link)) ?? []), link]);
  return [...groups.values()];
}

/** Streams of all links and of every egg to its young, after the items have their places. */
export function buildStreams(shares: Map<string, number>, items: Item[], links: Link[]): Stream[] {
  const ends = new Map<Link, Ends>();
  const lowerX = (link: Link) => link.lane?.x ?? link.way?.past[0]?.x ?? link.lower.x + eggOffset(link.lower);
  const upperX = (link: Link) =>
    link.lane?.x ?? link.way?.past.at(-1)?.x ?? link.upper.x + memberOffset(link.upper, link.link.parent);
  for (const group of grouped(links, (link) => link.link.parent))
    for (const [link, out] of sideBySide(group, lowerX)) ends.set(link, { out, into: 0 });
  for (const group of grouped(links, (link) => link.link.clutch))
    for (const [link, into] of sideBySide(group, upperX)) ends.set(link, { out: ends.get(link)?.out ?? 0, into });
  const parents = links.map((link) => parentStream(link, ends.get(link) ?? { out: 0, into: 0 }));
  return [...parents, ...items.flatMap((item) => youngStreams(shares, item))];
}

function parentStream(link: Link, { out, into }: Ends): Stream {
  const { upper, lower, lane, way } = link;
  const start = { x: upper.x + memberOffset(upper, link.link.parent) + out, y: upper.y + measures.symbol };
  const end = { x: lower.x + eggOffset(lower) + into, y: lower.y - measures.drop };
  const points = [start, { x: start.x, y: way?.leaves ?? upper.y + measures.below }];
  const extent = lane?.extents[0];
  if (lane && extent) points.push({ x: lane.x, y: extent.top }, { x: lane.x, y: extent.bottom });
  for (const { x, top, bottom } of way?.past ?? []) points.push({ x, y: top }, { x, y: bottom });
  if (way) points.push({ x: end.x, y: way.enters });
  points.push(end);
  return {
    key: link.key,
    from: link.link.parent,
    to: link.link.clutch,
    kind: 'parent',
    role: link.link.role,
    probability: link.link.probability,
    share: link.share,
    width: streamWidth(link.share),
    points,
    path: verticalPath(points),
  };
}

function youngStreams(shares: Map<string, number>, item: Item): Stream[] {
  const clutch = item.clutch;
  if (clutch === null) return [];
  const widths = item.members.map((id) => streamWidth(shares.get(id) ?? 0));
  let at = -widths.reduce((sum, width) => sum + width, 0) / 2;
  return item.members.map((id, index) => {
    const width = widths[index] ?? measures.leastStream;
    const start = { x: item.x + eggOffset(item) + at + width / 2, y: item.y - measures.drop };
    at += width;
    const points = [start, { x: item.x + index * measures.pitch, y: item.y - measures.symbol }];
    const share = shares.get(id) ?? 0;
    const common = { from: clutch, to: id, kind: 'young', role: null, probability: 1 } as const;
    return { key: `${clutch} ${id}`, ...common, share, width, points, path: verticalPath(points) };
  });
}
