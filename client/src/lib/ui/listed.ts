/** Names of which each is meant: `LK-01 and LK-02`. */
export const allOf = (names: readonly string[]): string =>
  names.length === 0 ? '' : names.reduce((told, name) => `${told} and ${name}`);

/** Names of which one is meant: `LK-01 or LK-02`. */
export const oneOf = (names: readonly string[]): string =>
  names.length === 0 ? '' : names.reduce((told, name) => `${told} or ${name}`);
