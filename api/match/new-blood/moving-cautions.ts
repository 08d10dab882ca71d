import { say } from '../../platform/say.ts';
/** What belongs beside every proposal that an animal moves to another keeper. */
export const movingCautions: readonly string[] = [
  say`The figures advise. The animals' welfare and the keeper's eye decide: health, age, temper and the room that there is.`,
  say`An animal that comes to others lives apart from them first, with tools and water of its own. Have it checked before it joins them, also for what amphibians pass on unseen, such as the chytrid fungus. How long and how is for a veterinarian who knows amphibians to say.`,
  say`Kinship counts only what the register knows: parents that nobody knows count as unrelated. Read it together with the depth of the pedigrees.`,
];
