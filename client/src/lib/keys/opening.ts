/**
 * How the actions open an address. The client sets it once to its own navigation, so that the registry can be read and tested where
 * there is no page.
 */
export const opening: { open: (address: string, more?: { readonly invalidateAll?: boolean }) => unknown } = {
  open: (address) => {
    throw new Error(`nobody said yet how to open ${address}`);
  },
};

/** Opens an address of the client. */
export const goto = (address: string, more?: { readonly invalidateAll?: boolean }): unknown =>
  opening.open(address, more);
