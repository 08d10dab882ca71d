/** What an animal is called where it may not be seen. */
export const privateAnimal = 'private animal';

/** How an animal is named in passing: by its code, else by its number, else as one that may not be seen. */
export function referenceName(animal: { code: string | null; number: string | null }): string {
  return animal.code ?? animal.number ?? privateAnimal;
}
