import { deviceStore, isFull, type DeviceStore, type SeenAnswer } from './device-store.ts';

/** Records that a device keeps for one keeper at most, with all that their pages need. */
export const mostRecords = 200;

const id = '[\\da-f]{8}-[\\da-f-]{27}';
const ofOne = [
  new RegExp(`^/(individuals/${id})(/(lineage|lineage/loops|pedigree|descendants|label-history))?(\\?.*)?$`),
  new RegExp(`^/(clutches/${id})$`),
  new RegExp(`^/(pairings/${id})(/parent-corrections)?$`),
  new RegExp(`^/(species/${id})$`),
  new RegExp(`^/(lines/${id})(/label-history)?$`),
  new RegExp(`^/(sources/${id})(/living)?$`),
  new RegExp(`^/(kept-plans/${id})$`),
];
/** What is asked about a record by its id: its claims, their evidence, what is measured of a line, the founders from a source. */
const about: readonly (readonly [RegExp, string])[] = [
  [new RegExp(`^/(?:claims|photographs|transfers)\\?(?:.*&)?individualId=(${id})`), 'individuals'],
  [new RegExp(`^/(?:claims|kept-plans|lineage/set)\\?(?:.*&)?lineId=(${id})`), 'lines'],
  [new RegExp(`^/(?:claims|individuals)\\?(?:.*&)?sourceId=(${id})`), 'sources'],
  [new RegExp(`^/evidence\\?(?:.*&)?claimId=(${id})`), 'claims'],
];
const lists = /^\/(individuals|pairings|clutches|species|lines|sources|kept-plans|today)(\?.*)?$/;

/**
 * Which record an answer belongs to, as `individuals/<id>`, or the list, as `list/pairings`; null for what a device does not keep: what is
 * searched for or far down a list, and all that has to do with people.
 */
export function recordOf(address: string): string | null {
  for (const pattern of ofOne) {
    const record = pattern.exec(address)?.[1];
    if (record !== undefined) return record;
  }
  for (const [pattern, kind] of about) {
    const record = pattern.exec(address)?.[1];
    if (record !== undefined) return `${kind}/${record}`;
  }
  const list = lists.exec(address)?.[1];
  return list === undefined || /[?&](after|q|number)=/.test(address) ? null : `list/${list}`;
}

/** Keeps an answer as a keeper saw it, if it is of a kind that is kept, and lets go of what was seen longest ago. */
export async function keepAnswer(keeperId: string, address: string, text: string, now: number): Promise<void> {
  const record = recordOf(address);
  if (record === null) return;
  const store = await deviceStore();
  const answer: SeenAnswer = { keeperId, address, record, text, seenAt: now, ...numberIn(record, address, text) };
  try {
    const work = store.transaction(['answers', 'records', 'session'], 'readwrite');
    // somebody else may have signed in since it was asked for
    if ((await work.objectStore('session').get('last'))?.keeperId === keeperId) {
      await work.objectStore('answers').put(answer);
      await work.objectStore('records').put({ keeperId, record, seenAt: now });
    }
    await work.done;
    await letGo(store, keeperId, mostRecords);
  } catch (error) {
    if (!isFull(error)) throw error;
    await letGo(store, keeperId, mostRecords / 4);
  }
}

/** The registry number of an animal, so that a label can be looked up. */
function numberIn(record: string, address: string, text: string): { number?: string } {
  if (!record.startsWith('individuals/') || address !== `/${record}`) return {};
  const { number } = JSON.parse(text) as { number?: unknown };
  return typeof number === 'string' ? { number } : {};
}

/** Leaves a keeper the records seen last. */
async function letGo(store: DeviceStore, keeperId: string, most: number): Promise<void> {
  const all = IDBKeyRange.bound([keeperId, 0], [keeperId, Infinity]);
  const surplus = (await store.countFromIndex('records', 'seen', all)) - most;
  if (surplus <= 0) return;
  const work = store.transaction(['answers', 'records'], 'readwrite');
  const [answers, records] = [work.objectStore('answers'), work.objectStore('records')];
  for (const key of await records.index('seen').getAllKeys(all, surplus)) {
    for (const answer of await answers.index('ofRecord').getAllKeys(key)) await answers.delete(answer);
    await records.delete(key);
  }
  await work.done;
}

/** What a keeper saw last at an address, and when; null where nothing is kept of it. */
export async function findAnswer(keeperId: string, address: string): Promise<{ text: string; seenAt: number } | null> {
  const store = await deviceStore();
  const number = /^\/individuals\?number=([^&]+)$/.exec(address)?.[1];
  if (number !== undefined) {
    const animal = await store.getFromIndex('answers', 'numbered', [keeperId, decodeURIComponent(number)]);
    return animal ? { text: `{"items":[${animal.text}],"next":null}`, seenAt: animal.seenAt } : null;
  }
  return (await store.get('answers', [keeperId, address])) ?? null;
}

/** Forgets what anybody but this keeper saw on this device; without one, what anybody saw. */
export async function forgetSeen(butOf: string | null): Promise<void> {
  const store = await deviceStore();
  const work = store.transaction(['answers', 'records', 'session', 'queue'], 'readwrite');
  // in the order of keys an array stands behind every text
  const others =
    butOf === null
      ? [IDBKeyRange.lowerBound([])]
      : [IDBKeyRange.upperBound([butOf], true), IDBKeyRange.lowerBound([butOf, []], true)];
  for (const range of others) {
    await work.objectStore('answers').delete(range);
    await work.objectStore('records').delete(range);
  }
  if ((await work.objectStore('session').get('last'))?.keeperId !== butOf) await work.objectStore('session').clear();
  // what is in the register already is only remembered; what waits is its keeper's own and stays
  for (const entry of await work.objectStore('queue').getAll())
    if (entry.state === 'done' && entry.keeperId !== butOf) await work.objectStore('queue').delete(entry.id);
  await work.done;
}

/** Remembers who was signed in when the service last answered, as it told it. */
export async function rememberSession(keeperId: string, text: string): Promise<void> {
  const store = await deviceStore();
  await store.put('session', { id: 'last', keeperId, text });
}

/** The service's last word on who is signed in; null where nobody was. */
export async function lastSession(): Promise<string | null> {
  const store = await deviceStore();
  return (await store.get('session', 'last'))?.text ?? null;
}
