import { isFar, type FamilyBox, boxOf } from './family-box.ts';
import type { Easel } from './line-painter.ts';
import { sizes } from './line-sizes.ts';
import type { Token } from './fills.ts';

/** Families in sight: bars, rings and young; from afar the young as a strip, filled as far as they live. */
export function paintFamilies(easel: Easel): void {
  const { layout, lit, kin } = easel;
  const full: FamilyBox[] = [];
  const thin: FamilyBox[] = [];
  for (let family = 0; family < layout.families.id.length; family++) {
    const box = boxOf(easel, family);
    if (!box) continue;
    const members = kin.membersOf(family);
    const isThin = lit
      ? !members.some((animal) => lit.marks[animal] !== 0)
      : members.every((animal) => easel.out[animal] === 1);
    (isThin ? thin : full).push(box);
  }
  paintThin(easel, thin);
  paintBars(easel, full);
  if (isFar(easel.view)) paintStrips(easel, full);
  else {
    paintRings(easel, full);
    paintSymbols(easel, thin, true);
    paintSymbols(easel, full, false);
  }
}

/** Families that are set aside: a line where their bar would be, so that the shape of the line stays. */
function paintThin({ ctx, palette, view }: Easel, boxes: readonly FamilyBox[]): void {
  ctx.strokeStyle = palette('firm');
  ctx.lineWidth = view.k < 0.4 ? 1 : 1.5;
  ctx.beginPath();
  for (const { left, top, width, height } of boxes) {
    ctx.moveTo(left, top + height / 2);
    ctx.lineTo(left + width, top + height / 2);
  }
  ctx.stroke();
}

function paintBars({ ctx, bars, patterns, palette }: Easel, boxes: readonly FamilyBox[]): void {
  const first = boxes[0];
  const isPlain = (first?.height ?? 0) < 3.5;
  bars.fills.forEach((fill, place) => {
    ctx.fillStyle = isPlain ? palette(fill.marks.length === 0 ? fill.ground : fill.pen) : (patterns[place] ?? '');
    for (const { family, left, top, width, height } of boxes) {
      let x = left;
      for (let part = bars.start[family] ?? 0; part < (bars.start[family + 1] ?? 0); part++) {
        const wide = (bars.share[part] ?? 0) * width;
        if (bars.fill[part] === place) ctx.fillRect(x, top, wide, height);
        x += wide;
      }
    }
  });
  ctx.strokeStyle = palette('ink');
  ctx.lineWidth = isPlain ? 0.5 : 1;
  ctx.beginPath();
  for (const { family, left, top, width, height } of boxes) {
    ctx.rect(left, top, width, height);
    if (isPlain) continue;
    let x = left;
    for (let part = bars.start[family] ?? 0; part < (bars.start[family + 1] ?? 0) - 1; part++) {
      x += (bars.share[part] ?? 0) * width;
      ctx.moveTo(x, top);
      ctx.lineTo(x, top + height);
    }
  }
  ctx.stroke();
}

/** Under each bar: its young that live in ink, the others open; lit ones in red. */
function paintStrips({ ctx, line, kin, lit, out, palette, view }: Easel, boxes: readonly FamilyBox[]): void {
  const deep = Math.max(2, 7 * view.k);
  const groups: [Token, (animal: number) => boolean][] = [
    ['ink', (animal) => line.animals.status[animal] === 'alive' && out[animal] !== 1 && !lit],
    ['firm', (animal) => line.animals.status[animal] === 'alive' && lit !== null && lit.marks[animal] === 0],
    ['pen', (animal) => lit !== null && lit.marks[animal] !== 0],
  ];
  for (const [token, isOf] of groups) {
    ctx.fillStyle = palette(token);
    for (const { family, left, top, height, width } of boxes) {
      const members = kin.membersOf(family);
      const pitch = width / members.length;
      members.forEach((animal, at) => {
        if (isOf(animal)) ctx.fillRect(left + at * pitch, top + height + 1, Math.max(1, pitch), deep);
      });
    }
  }
}

function paintRings({ ctx, layout: { families }, palette, view }: Easel, boxes: readonly FamilyBox[]): void {
  const r = sizes.ring * view.k;
  const circle = (family: number): void => {
    const [x, y] = [(families.x[family] ?? 0) * view.k + view.x, (families.y[family] ?? 0) * view.k + view.y];
    ctx.moveTo(x + r, y);
    ctx.arc(x, y, r, 0, 2 * Math.PI);
  };
  ctx.setLineDash([1, 3]);
  ctx.strokeStyle = palette('ink-2');
  ctx.lineWidth = 1;
  ctx.beginPath();
  for (const { family } of boxes) {
    const [from, to] = [families.from[family] ?? NaN, families.to[family] ?? NaN];
    if (Number.isNaN(from) || Number.isNaN(to)) continue;
    const x = (families.x[family] ?? 0) * view.k + view.x;
    ctx.moveTo(x, Math.max(0, from) * view.k + view.y);
    ctx.lineTo(x, to * view.k + view.y);
  }
  ctx.stroke();
  const clutches = boxes.filter(({ family }) => families.kind[family] === 'clutch');
  ctx.fillStyle = palette('paper');
  for (const [isLoose, dash] of [
    [0, []],
    [1, [2, 1.5]],
  ] as const) {
    ctx.setLineDash([...dash]);
    ctx.strokeStyle = palette('ink');
    ctx.beginPath();
    for (const { family } of clutches) if (families.loose[family] === isLoose) circle(family);
    ctx.fill();
    ctx.stroke();
  }
  ctx.setLineDash([]);
}

/** Symbols of young, gathered by colour and by whether they live. */
function paintSymbols(easel: Easel, boxes: readonly FamilyBox[], isThin: boolean): void {
  const { ctx, line, kin, lit, out, palette } = easel;
  const groups = new Map<string, number[]>();
  for (const { family } of boxes)
    for (const animal of kin.membersOf(family)) {
      const isLit = lit !== null && lit.marks[animal] !== 0;
      const isAside = isThin || (lit !== null && !isLit) || out[animal] === 1 || line.animals.number[animal] === null;
      const token: Token = isLit ? 'pen' : isAside ? 'firm' : 'ink';
      const key = `${token} ${line.animals.status[animal] === 'alive' ? 'full' : 'open'}`;
      const group = groups.get(key) ?? [];
      group.push(animal);
      groups.set(key, group);
    }
  for (const [key, animals] of groups) {
    const [token, filling] = key.split(' ') as [Token, string];
    ctx.fillStyle = filling === 'full' ? palette(token) : palette('paper');
    ctx.strokeStyle = palette(token);
    ctx.lineWidth = isThin ? 0.7 : 1;
    ctx.beginPath();
    for (const animal of animals) addSymbol(easel, animal);
    ctx.fill();
    ctx.stroke();
  }
}

function addSymbol({ ctx, line, layout, view }: Easel, animal: number): void {
  const x = (layout.animals.x[animal] ?? 0) * view.k + view.x;
  const y = (layout.animals.y[animal] ?? 0) * view.k + view.y;
  const r = (sizes.symbol - 0.5) * view.k;
  const sex = line.animals.sex[animal];
  if (sex === 'male') ctx.rect(x - r, y - r, 2 * r, 2 * r);
  else if (sex === 'female') {
    ctx.moveTo(x + r, y);
    ctx.arc(x, y, r, 0, 2 * Math.PI);
  } else {
    const d = r * 1.2;
    ctx.moveTo(x, y - d);
    ctx.lineTo(x + d, y);
    ctx.lineTo(x, y + d);
    ctx.lineTo(x - d, y);
    ctx.closePath();
  }
}
