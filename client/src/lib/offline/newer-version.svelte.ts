import { isHalfWritten } from './half-written.ts';

/** How often a page that stays open looks for a newer version, in ms. */
const lookEvery = 3_600_000;

/**
 * A newer version of the client that waits to be loaded. The service worker keeps it ready; nothing changes under the reader until they
 * ask for it.
 */
class NewerVersion {
  isHere = $state(false);
  /** The reader asked for it, but something half written stands on the page. */
  isHeldUp = $state(false);
  #registration: ServiceWorkerRegistration | null = null;

  /** Begins to look; gives the function that ends it. Browsers give no service worker to a plain http address but this machine's. */
  start(): () => void {
    const workers = navigator.serviceWorker as ServiceWorkerContainer | undefined;
    if (!workers) return () => undefined;
    void workers.ready.then((registration) => this.#watch(registration, workers));
    const look = (): void => {
      if (!document.hidden && navigator.onLine) void this.#registration?.update().catch(() => undefined);
    };
    const clock = setInterval(look, lookEvery);
    document.addEventListener('visibilitychange', look);
    return () => {
      clearInterval(clock);
      document.removeEventListener('visibilitychange', look);
    };
  }

  #watch(registration: ServiceWorkerRegistration, workers: ServiceWorkerContainer): void {
    this.#registration = registration;
    // without a controller it is the very first version that is being kept: no news
    const tell = (): void => void (this.isHere ||= registration.waiting !== null && workers.controller !== null);
    tell();
    registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', tell));
  }

  /** Loads the newer version; where something is half written, only if the reader says so once more. */
  load(): void {
    if (isHalfWritten() && !this.isHeldUp) return void (this.isHeldUp = true);
    const waiting = this.#registration?.waiting;
    // another tab may have let it in already
    if (!waiting) {
      location.reload();
      return;
    }
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
    waiting.postMessage('take-over');
  }
}

export const newerVersion = new NewerVersion();
