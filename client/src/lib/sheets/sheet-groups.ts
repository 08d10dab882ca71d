import type { SheetAnimal } from '$shared/sheet/sheet-document.ts';
import { allOf } from '../ui/listed.ts';

/** Animals of a sheet of which it says the same but for number, code, sex and leaving the water: clutch-mates, as a rule. */
export interface SheetGroup {
  readonly first: SheetAnimal;
  readonly animals: readonly SheetAnimal[];
}

/** Puts together the animals of which a sheet says the same, in its order. */
export function groupsOf(animals: readonly SheetAnimal[]): SheetGroup[] {
  const groups = new Map<string, SheetAnimal[]>();
  for (const animal of animals) {
    const { clutch, species, line, hatched, label, inbreeding, claims, depth } = animal;
    const said = JSON.stringify([clutch, species, line, hatched, label, inbreeding, claims, depth]);
    // two founders of one source are two animals, with nothing in common but that
    const key = clutch === null ? animal.ref : said;
    const group = groups.get(key);
    if (group) group.push(animal);
    else groups.set(key, [animal]);
  }
  return [...groups.values()].flatMap((group) => (group[0] ? [{ first: group[0], animals: group }] : []));
}

/** How a buyer calls an animal: by the keeper's code, else by its number. */
export const nameOnSheet = ({ code, number }: Pick<SheetAnimal, 'code' | 'number'>): string => code ?? number;

/** Names of a few animals in words: "IH-94 and IH-95". */
export function namesInWords(animals: readonly SheetAnimal[]): string {
  const names = animals.map(nameOnSheet);
  return names.length < 3 ? allOf(names) : `${names.slice(0, 2).join(', ')} and ${names.length - 2} more`;
}
