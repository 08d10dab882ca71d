/** What this device keeps for its reader. Where the browser closes its storage, nothing is kept and nothing breaks. */
export const kept = {
  get(key: string): string | null {
    try {
      return localStorage.getItem(key);
    } catch {
      return null;
    }
  },
  /** Keeps a value; null: keeps none any more. */
  set(key: string, value: string | null): void {
    try {
      if (value === null) localStorage.removeItem(key);
      else localStorage.setItem(key, value);
    } catch {
      // Closed storage: the choice holds for this visit.
    }
  },
};
