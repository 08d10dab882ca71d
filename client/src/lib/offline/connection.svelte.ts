/** How long a service that did not answer is left alone before it is looked for again, in ms: at first, and at most. */
// nobody watches who listens
/* eslint-disable svelte/prefer-svelte-reactivity */
const [shortest, longest] = [2_000, 60_000];

/** Whether the service answers. Hears of every request; while none is answered it looks again by itself. */
export class Connection {
  isOff = $state(false);
  readonly #address: string;
  readonly #listeners = new Set<() => void>();
  #wait = shortest;
  #clock: ReturnType<typeof setTimeout> | undefined;

  constructor(address = '/api/health/live') {
    this.#address = address;
  }

  /** Begins to listen to the device; gives the function that ends it. */
  start(): () => void {
    const look = (): void => void (this.isOff && !document.hidden && this.look());
    const lose = (): void => this.heard(false);
    window.addEventListener('offline', lose);
    window.addEventListener('online', look);
    window.addEventListener('focus', look);
    document.addEventListener('visibilitychange', look);
    if (!navigator.onLine) lose();
    return () => {
      window.removeEventListener('offline', lose);
      window.removeEventListener('online', look);
      window.removeEventListener('focus', look);
      document.removeEventListener('visibilitychange', look);
      clearTimeout(this.#clock);
    };
  }

  /** Calls `listener` each time that the service answers again; gives the function that ends it. */
  onBack(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** A request was answered, or no answer came. */
  readonly heard = (isAnswered: boolean): void => {
    if (!isAnswered) {
      this.isOff = true;
      this.#lookLater();
    } else if (this.isOff) {
      clearTimeout(this.#clock);
      this.#wait = shortest;
      this.isOff = false;
      for (const listener of this.#listeners) listener();
    }
  };

  /** Asks whether the service is there; one that takes longer than ten seconds to say so is not. */
  async look(): Promise<void> {
    clearTimeout(this.#clock);
    const given = new AbortController();
    const patience = setTimeout(() => given.abort(), 10_000);
    try {
      const answer = await fetch(this.#address, { cache: 'no-store', signal: given.signal });
      // a page that some network puts before every address is no answer of ours
      this.heard(answer.headers.get('Content-Type')?.includes('json') ?? false);
    } catch {
      this.heard(false);
    } finally {
      clearTimeout(patience);
    }
  }

  #lookLater(): void {
    clearTimeout(this.#clock);
    this.#clock = setTimeout(() => {
      if (document.hidden) this.#lookLater();
      else void this.look();
    }, this.#wait);
    this.#wait = Math.min(longest, this.#wait * 2);
  }
}

/** What the screens share. */
export const connection = new Connection();
