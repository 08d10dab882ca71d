/** Lets everybody else who waits for the process have a turn: work on a large sheet must not hold up other requests. */
export function breathe(): Promise<void> {
  return new Promise((resolve) => {
    setImmediate(resolve);
  });
}
