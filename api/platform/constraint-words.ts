import { say } from './say.ts';

/** What a keeper is told when a rule of the database stands against a change, and the field of the request it concerns. */
export interface ConstraintMessage {
  readonly pointer: string;
  readonly detail: string;
}

/** A rule whose words have no hole. */
export const rule = (pointer: string, detail: string): ConstraintMessage => ({ pointer, detail });
/** As `rule`, for words with a hole: they are said anew for each reader. */
const said = (pointer: string, words: () => string): ConstraintMessage => ({
  pointer,
  get detail() {
    return words();
  },
});
/** A record that is named is not there. */
export const missing = (pointer: string, word: string): ConstraintMessage =>
  said(pointer, () => say`There is no ${word} with this id.`);
/** A code that is in use. */
export const taken = (word: string): ConstraintMessage =>
  said('/code', () => say`You already have ${word} with this code. Choose another code.`);
/** A date without what it may mean. */
export const bounds = (pointer: string): ConstraintMessage =>
  rule(pointer, say`The date must be given with the first and the last day that it may mean, in this order.`);
/** Something that there is once. */
export const onlyOne = (word: string): ConstraintMessage =>
  said('', () => say`There is one ${word}, and it is there already.`);
