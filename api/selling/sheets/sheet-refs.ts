/** References of a sheet: a1, c1, s1 and so on in the order in which records are first named; and which records they stand for. */
export class SheetRefs {
  readonly #refs = { a: new Map<string, string>(), c: new Map<string, string>(), s: new Map<string, string>() };

  animal(id: string): string {
    return this.#ref('a', id);
  }

  clutch(id: string): string {
    return this.#ref('c', id);
  }

  source(id: string): string {
    return this.#ref('s', id);
  }

  /** The reference to a record that was named before; null where it was not. */
  known(kind: 'a' | 'c' | 's', id: string): string | null {
    return this.#refs[kind].get(id) ?? null;
  }

  /** The ids of all sources that were named. */
  sources(): string[] {
    return [...this.#refs.s.keys()];
  }

  /** The ids by their references. */
  records(): Record<string, string> {
    const all = Object.values(this.#refs).flatMap((refs) => [...refs].map(([id, ref]) => [ref, id] as const));
    return Object.fromEntries(all);
  }

  #ref(kind: 'a' | 'c' | 's', id: string): string {
    const refs = this.#refs[kind];
    const ref = refs.get(id) ?? `${kind}${refs.size + 1}`;
    refs.set(id, ref);
    return ref;
  }
}
