import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import type { QueueEntry } from './queue-entry.ts';

/** An answer of the service as a keeper saw it. */
export interface SeenAnswer {
  readonly keeperId: string;
  /** Path and query below `/api/v1`. */
  readonly address: string;
  /** What the answer belongs to, as `individuals/<id>`; all answers of a record come and go together. */
  readonly record: string;
  /** The answer, JSON. */
  readonly text: string;
  /** When it was seen, in ms since 1970. */
  readonly seenAt: number;
  /** The registry number, if it is an animal: so a label can be looked up. */
  readonly number?: string;
}

/** When something of a record was last seen by a keeper. */
export interface SeenRecord {
  readonly keeperId: string;
  readonly record: string;
  readonly seenAt: number;
}

/** Who was signed in when the service last answered, with that answer. */
export interface LastSession {
  readonly id: 'last';
  readonly keeperId: string;
  readonly text: string;
}

interface Device extends DBSchema {
  answers: {
    key: [string, string];
    value: SeenAnswer;
    indexes: { ofRecord: [string, string]; numbered: [string, string] };
  };
  records: { key: [string, string]; value: SeenRecord; indexes: { seen: [string, number] } };
  session: { key: string; value: LastSession };
  queue: { key: string; value: QueueEntry; indexes: { ofKeeper: string } };
}

/** What this device keeps: what keepers saw, for each of them, and what they wrote that is not sent yet. */
export type DeviceStore = IDBPDatabase<Device>;

const opened = new Map<string, Promise<DeviceStore>>();

/** Opens the store, once. Rejects where the browser has none or closes it to us. */
export function deviceStore(name = 'linekeeper'): Promise<DeviceStore> {
  const store = opened.get(name) ?? open(name);
  opened.set(name, store);
  // a store that could not be opened, or that the browser closed, is opened anew the next time
  store.catch(() => opened.delete(name));
  return store;
}

function open(name: string): Promise<DeviceStore> {
  return openDB<Device>(name, 1, {
    upgrade(store) {
      const answers = store.createObjectStore('answers', { keyPath: ['keeperId', 'address'] });
      answers.createIndex('ofRecord', ['keeperId', 'record']);
      answers.createIndex('numbered', ['keeperId', 'number']);
      const records = store.createObjectStore('records', { keyPath: ['keeperId', 'record'] });
      records.createIndex('seen', ['keeperId', 'seenAt']);
      store.createObjectStore('session', { keyPath: 'id' });
      store.createObjectStore('queue', { keyPath: 'id' }).createIndex('ofKeeper', 'keeperId');
    },
    terminated: () => opened.delete(name),
  });
}

/** Whether a write failed because the device has no room left. */
export const isFull = (error: unknown): boolean => error instanceof Error && error.name === 'QuotaExceededError';
