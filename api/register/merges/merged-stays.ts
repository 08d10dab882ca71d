/** A stay in a pairing as it is kept: EDTF texts with the days that they may mean. */
export interface StayRow {
  readonly id: string;
  readonly individualId: string;
  readonly joined: string | null;
  readonly joinedEarliest: string | null;
  readonly joinedLatest: string | null;
  readonly left: string | null;
  readonly leftEarliest: string | null;
  readonly leftLatest: string | null;
}

type Dates = Omit<StayRow, 'id' | 'individualId'>;

/** Days compare as texts; open ends come before and after all of them. */
const asText = (day: string | null, open: '' | '~'): string =>
  day === null ? open : day === '-infinity' ? '' : day === 'infinity' ? '~' : day;
const start = (stay: Dates): string => asText(stay.joinedLatest, '');
const end = (stay: Dates): string => asText(stay.leftEarliest, '~');
const isCertain = (stay: Dates): boolean => stay.leftEarliest === null || start(stay) < end(stay);

/** Whether an animal was certainly in both places at one time: the rule of the database (`housed`), in words of ours. */
export function isOverlap(one: Dates, other: Dates): boolean {
  return isCertain(one) && isCertain(other) && start(one) < end(other) && start(other) < end(one);
}

/**
 * The stays of the kept animal in one pairing once the duplicate's are its own: those that certainly overlap are joined into one,
 * from the earliest day on that somebody noted until the last, or until now where one of them does not say that it left.
 */
export function joinedStays(stays: readonly StayRow[], keptId: string): StayRow[] {
  const joined: StayRow[] = [];
  const inTime = [...stays].sort((one, other) => (start(one) < start(other) ? -1 : 1));
  for (const stay of inTime) {
    const own = { ...stay, individualId: keptId };
    const place = joined.findIndex((other) => isOverlap(other, stay));
    const other = joined[place];
    if (other) joined[place] = joinedOf(other, own, stays, keptId);
    else joined.push(own);
  }
  return joined;
}

function joinedOf(one: StayRow, other: StayRow, stays: readonly StayRow[], keptId: string): StayRow {
  const isOfKept = (id: string): boolean => stays.some((stay) => stay.id === id && stay.individualId === keptId);
  const first = [one, other]
    .filter((stay) => stay.joined !== null)
    .sort((a, b) => (start(a) < start(b) ? -1 : 1))
    .at(0);
  const { joined, joinedEarliest, joinedLatest } = first ?? one;
  const last = [one, other].find((stay) => stay.left === null) ?? (end(one) < end(other) ? other : one);
  const { left, leftEarliest, leftLatest } = last;
  const id = isOfKept(one.id) ? one.id : other.id;
  return { id, individualId: keptId, joined, joinedEarliest, joinedLatest, left, leftEarliest, leftLatest };
}

/** Whether two lists hold the same stays, ids included. */
export function isSameStays(one: readonly StayRow[], other: readonly StayRow[]): boolean {
  const texts = (stays: readonly StayRow[]): string =>
    stays
      .map(({ id, individualId, joined, left }) => JSON.stringify([id, individualId, joined, left]))
      .sort()
      .join();
  return texts(one) === texts(other);
}
