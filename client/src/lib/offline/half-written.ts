/**
 * Forms in which somebody typed and which were not written down yet. What a form says of itself with `data-survives` is put back after the
 * page was loaded anew, so it stops nobody.
 */
const touched = new Set<HTMLFormElement>();

/** Watches all forms of the page; gives the function that ends it. */
export function watchForms(root: Document = document): () => void {
  const hear = (event: Event): void => {
    const form = event.target instanceof Element ? event.target.closest('form') : null;
    if (form) touched.add(form);
  };
  root.addEventListener('input', hear, true);
  return () => root.removeEventListener('input', hear, true);
}

/** Whether the page holds something typed that would be lost with it. A form that is gone was written down or left. */
export function isHalfWritten(): boolean {
  for (const form of touched) if (!form.isConnected) touched.delete(form);
  return [...touched].some((form) => !('survives' in form.dataset) && form.querySelector('[type=submit]') !== null);
}
