/** Up to so many nodes a worker would take longer to be asked than the layout takes. */
export const nodesInPage = 100;

interface Asked<Question> {
  at: number;
  question: Question;
}
interface Answered<Layout> {
  at: number;
  layout: Layout;
}

/** Lays drawings of one kind out beside the page, in one worker for all of them, which starts when it is first wanted. */
export class LayoutWorker<Question, Layout> {
  #worker: Worker | null = null;
  #asked = 0;

  /**
   * @param start starts the worker, whose file calls `answerLayouts`
   * @param here the same layout in the page, where no worker can be had
   */
  constructor(
    private readonly start: () => Worker,
    private readonly here: (question: Question) => Layout,
  ) {}

  /** Starts the worker ahead of its first question, for who knows that a large drawing is coming. */
  ready = (): void => {
    try {
      this.#running();
    } catch {
      // the page lays out itself
    }
  };

  /** The layout, made by the worker; by the page where there is none or it fails, with the same result. */
  async layOut(question: Question): Promise<Layout> {
    try {
      return await this.#apart(question);
    } catch {
      return this.here(question);
    }
  }

  #running(): Worker {
    return (this.#worker ??= this.start());
  }

  #apart(question: Question): Promise<Layout> {
    const running = this.#running();
    const at = ++this.#asked;
    return new Promise((resolve, reject) => {
      const ended = new AbortController();
      const hear = ({ data }: MessageEvent<Answered<Layout>>): void => {
        if (data.at !== at) return;
        ended.abort();
        resolve(data.layout);
      };
      const fail = (event: Event): void => {
        ended.abort();
        running.terminate();
        if (this.#worker === running) this.#worker = null;
        reject(new Error(event.type));
      };
      running.addEventListener('message', hear, { signal: ended.signal });
      running.addEventListener('error', fail, { signal: ended.signal });
      running.postMessage({ at, question } satisfies Asked<Question>);
    });
  }
}

/** What a file of a worker does: answers each question by its layout. */
export function answerLayouts<Question, Layout>(layout: (question: Question) => Layout): void {
  self.onmessage = ({ data }: MessageEvent<Asked<Question>>): void => {
    self.postMessage({ at: data.at, layout: layout(data.question) } satisfies Answered<Layout>);
  };
}

/** Lays out what changes meanwhile: one layout at a time, and after it only the newest state. */
export class LayoutTurns {
  #isBusy = false;
  #isStale = false;

  get isBusy(): boolean {
    return this.#isBusy;
  }

  /** @param layOut lays out and draws what is wanted when it begins */
  async take(layOut: () => Promise<void>): Promise<void> {
    this.#isStale = true;
    if (this.#isBusy) return;
    this.#isBusy = true;
    try {
      while (this.#isStale) {
        this.#isStale = false;
        await layOut();
      }
    } finally {
      this.#isBusy = false;
    }
  }
}
