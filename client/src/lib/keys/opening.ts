interface Opening {
  open: (address: string, more?: { readonly invalidateAll?: boolean }) => unknown;
  /** How often the reader went on to another page so far. */
  turns: number;
  turn(): void;
}

/**
 * How the actions open an address. The client sets it once to its own navigation, so that the registry can be read and tested where
 * there is no page.
 */
export const opening: Opening = {
  open: (address) => {
    throw new Error(`nobody said yet how to open ${address}`);
  },
  turns: 0,
  turn() {
    this.turns += 1;
  },
};

/** Opens an address of the client. */
export const goto = (address: string, more?: { readonly invalidateAll?: boolean }): unknown =>
  opening.open(address, more);

/** For what opens a page only after an answer: what it gives opens nothing if the reader has gone elsewhere since it was asked for. */
export function goUnlessElsewhere(): (address: string) => Promise<void> {
  const { turns } = opening;
  return async (address) => {
    if (turns === opening.turns) await opening.open(address);
  };
}
