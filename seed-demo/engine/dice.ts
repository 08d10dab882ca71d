import { createHash } from 'node:crypto';

/** A small source of chance that gives the same throws for the same name, so that one changed clutch changes no other. */
export interface Dice {
  /** A whole number from least to most, both included. */
  whole(least: number, most: number): number;
  /** A number from least to most. */
  real(least: number, most: number): number;
  chance(probability: number): boolean;
  pick<T>(list: readonly [T, ...T[]]): T;
}

/** Dice for one named thing (mulberry32, a published public-domain generator, started from a hash of the name). */
export function diceFor(name: string): Dice {
  let state = createHash('sha256').update(name).digest().readUInt32BE(0);
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const whole = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1));
  return {
    whole,
    real: (least, most) => least + next() * (most - least),
    chance: (probability) => next() < probability,
    pick: (list) => list[whole(0, list.length - 1)] ?? list[0],
  };
}

const firstMoment = Date.parse('2026-11-01T08:00:00Z');

/** Gives ids in the form of UUID version 7 that are the same on every run and sort in the order in which they were asked for. */
export class IdMaker {
  private serial = 0;

  /** The next id; the name of the thing makes its random part. */
  next(name: string): string {
    const time = (firstMoment + this.serial++).toString(16).padStart(12, '0');
    const rest = createHash('sha256').update(name).digest('hex');
    const variant = ((parseInt(rest.slice(3, 4), 16) & 3) | 8).toString(16);
    return `${time.slice(0, 8)}-${time.slice(8)}-7${rest.slice(0, 3)}-${variant}${rest.slice(4, 7)}-${rest.slice(7, 19)}`;
  }
}
