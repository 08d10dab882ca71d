import type { Factory } from './factories.ts';

type Coded = Readonly<Record<string, unknown>> & { readonly code: string };

/** The animals of a test by the codes that it calls them by. */
export class AnimalsByCode {
  readonly #ids = new Map<string, string>();

  readonly idOf = (code: string): string => this.#ids.get(code) ?? `no ${code}`;
  readonly codeOf = (id: string): string => [...this.#ids].find(([, known]) => known === id)?.[0] ?? id;

  /** Adds one. */
  async add(by: Factory, fields: Coded): Promise<void> {
    const { id } = await by.individual(fields);
    this.#ids.set(fields.code, id);
  }

  /** Raises young from a clutch. */
  async raise(by: Factory, clutchId: string, animals: readonly Coded[]): Promise<void> {
    for (const { id, code } of await by.offspring(clutchId, { animals })) this.#ids.set(code ?? '', id);
  }
}
