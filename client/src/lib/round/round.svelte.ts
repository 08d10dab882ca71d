// Maps and sets here are replaced whole, never changed in place.
/* eslint-disable svelte/prefer-svelte-reactivity */
import { api } from '../api/client.ts';
import type { Clutch, Individual, IndividualItem, Page, Pairing } from '../api/types.ts';

/** Most animals that one goes through at a time. */
const most = 1000;

/** Animals that one goes through one by one: named beforehand, or picked as one comes to them. */
export class Round {
  /** Ids or registry numbers, in the order in which one comes to them. */
  names = $state.raw<readonly string[]>([]);
  at = $state(0);
  /** The animal that one stands before; null while it is read, and when one is through. */
  animal = $state.raw<Individual | null>(null);
  /** Whose young or members these are. */
  title = $state('');
  /** By name: what was written of it. */
  done = $state.raw<ReadonlyMap<string, string>>(new Map());

  readonly isThrough = $derived(this.at >= this.names.length);
  readonly name = $derived(this.names[this.at]);

  /** Reads which animals an address means. Throws `ProblemError`. */
  async start(parameters: URLSearchParams): Promise<void> {
    this.names = (await this.#namesIn(parameters)).slice(0, most);
    this.at = 0;
    this.done = new Map();
    await this.read();
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

  /** Reads the animal that one stands before. Throws `ProblemError`. */
  async read(): Promise<void> {
    const { name } = this;
    this.animal = null;
    if (name === undefined) return;
    const animal = await readAnimal(name);
    if (this.name === name) this.animal = animal;
  }

  /** Goes on or back. Throws `ProblemError`. */
  async step(by: 1 | -1): Promise<void> {
    this.at = Math.max(0, Math.min(this.names.length, this.at + by));
    await this.read();
  }

  /** Puts an animal next and goes to it. Throws `ProblemError`. */
  async come(id: string): Promise<void> {
    const known = this.names.indexOf(id);
    if (known < 0) this.names = [...this.names, id];
    this.at = known < 0 ? this.names.length - 1 : known;
    await this.read();
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
  const [found] = (await api.get<Page<IndividualItem>>('/individuals', { query: { number: name, limit: 1 } })).items;
  return found ? api.get<Individual>(`/individuals/${found.id}`) : null;
}
