// Maps and sets here are replaced whole, never changed in place.
/* eslint-disable svelte/prefer-svelte-reactivity */
import { api } from '../api/client.ts';
import type { Clutch, Individual, IndividualItem, Page, Pairing } from '../api/types.ts';
import { connection } from '../offline/connection.svelte.ts';

/** Most animals that one goes through at a time, and most that are read beforehand: a device keeps some 200 records. */
const [most, ahead] = [1000, 60];

/** Animals that one goes through one by one: named beforehand, or picked as one comes to them. */
export class Round {
  /** Ids or registry numbers, in the order in which one comes to them. */
  names = $state.raw<readonly string[]>([]);
  at = $state(0);
  /** The animal that one stands before; null until the first is read, where there is none of that name, and when one is through. */
  animal = $state.raw<Individual | null>(null);
  /** Whose young or members these are. */
  title = $state('');
  /** By name: what was written of it. */
  done = $state.raw<ReadonlyMap<string, string>>(new Map());

  #goings = 0;
  #isLeft = false;

  readonly isThrough = $derived(this.at >= this.names.length);
  readonly name = $derived(this.names[this.at]);

  /** Reads which animals an address means. Throws `ProblemError`. */
  async start(parameters: URLSearchParams): Promise<void> {
    this.names = (await this.#namesIn(parameters)).slice(0, most);
    await this.read();
    void this.#readAhead();
  }

  /** Reads the others once, one after the other, so that the device has them where there is no network at the tanks. */
  async #readAhead(): Promise<void> {
    for (const name of this.names.slice(1, 1 + ahead)) {
      if (this.#isLeft || connection.isOff) return;
      await readAnimal(name).catch(() => null);
    }
  }

  /** Nobody goes through them any more. */
  leave(): void {
    this.#isLeft = true;
  }

  async #namesIn(parameters: URLSearchParams): Promise<string[]> {
    const [clutchId, pairingId] = [parameters.get('clutch'), parameters.get('pairing')];
    if (clutchId !== null) {
      const clutch = await api.get<Clutch>(`/clutches/${encodeURIComponent(clutchId)}`);
      this.title = clutch.title;
      return clutch.young.filter(({ status }) => status === 'alive').map(({ id }) => id);
    }
    if (pairingId !== null) {
      const pairing = await api.get<Pairing>(`/pairings/${encodeURIComponent(pairingId)}`);
      this.title = pairing.name;
      return pairing.members
        .filter(({ left, individual }) => left === null && !individual.isPrivate)
        .map(({ individual }) => individual.id);
    }
    this.title = '';
    return [...new Set((parameters.get('animals') ?? '').split(',').filter(Boolean))];
  }

  /** Reads the animal that one stands before anew. Throws `ProblemError`. */
  read(): Promise<void> {
    return this.#goTo(this.at);
  }

  /** Goes on or back. Throws `ProblemError`. */
  step(by: 1 | -1): Promise<void> {
    return this.#goTo(Math.max(0, Math.min(this.names.length, this.at + by)));
  }

  /** Puts an animal next and goes to it. Throws `ProblemError`. */
  come(id: string): Promise<void> {
    const known = this.names.indexOf(id);
    if (known < 0) this.names = [...this.names, id];
    return this.#goTo(known < 0 ? this.names.length - 1 : known);
  }

  /** The animal before stays until the next one is there, so that the form stands and a quick hand has a field to type in. */
  async #goTo(at: number): Promise<void> {
    const going = ++this.#goings;
    const name = this.names[at];
    let animal: Individual | null = null;
    try {
      if (name !== undefined) animal = await readAnimal(name);
    } finally {
      if (going === this.#goings) [this.at, this.animal] = [at, animal];
    }
  }

  /** Remembers what was written of an animal, or that it was taken back. */
  note(name: string, what: string | null): void {
    const done = new Map(this.done);
    if (what === null) done.delete(name);
    else done.set(name, what);
    this.done = done;
  }
}

async function readAnimal(name: string): Promise<Individual | null> {
  if (/^[0-9a-f]{8}-/.test(name)) return api.get<Individual>(`/individuals/${encodeURIComponent(name)}`);
  const [found] = (await api.get<Page<IndividualItem>>('/individuals', { query: { number: name } })).items;
  return found ? api.get<Individual>(`/individuals/${found.id}`) : null;
}
