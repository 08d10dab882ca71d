/** How many comparisons of two codes one sheet may cost; a sheet full of unknown parents gets fewer suggestions, not a long wait. */
const mostComparisons = 20_000_000;

/** Finds codes that somebody may have meant: one slip of the pen away, or different only in dashes, spaces and zeros. */
export class NearMisses {
  readonly #codes: () => Iterable<string>;
  readonly #suggestions = new Map<string, string[]>();
  #byBareForm: Map<string, string> | null = null;
  #comparisons = 0;

  /** @param codes the codes of the sheet, asked for when the first suggestion is wanted */
  constructor(codes: () => Iterable<string>) {
    this.#codes = codes;
  }

  /** Up to three codes near to one that does not exist, likeliest first. */
  near(code: string): string[] {
    let found = this.#suggestions.get(code);
    if (found === undefined) {
      found = this.#search(code);
      this.#suggestions.set(code, found);
    }
    return found;
  }

  #search(code: string): string[] {
    this.#byBareForm ??= new Map([...this.#codes()].map((known) => [bareForm(known), known]));
    const sameBare = this.#byBareForm.get(bareForm(code));
    if (sameBare !== undefined) return [sameBare];
    if (this.#comparisons > mostComparisons || code.length < 3) return [];
    const found: string[] = [];
    const wanted = code.toLowerCase();
    for (const known of this.#codes()) {
      this.#comparisons += 1;
      if (Math.abs(known.length - code.length) <= 1 && isOneSlipAway(wanted, known.toLowerCase())) found.push(known);
      if (found.length === 3) break;
    }
    return found;
  }
}

/** A code without what people write differently: dashes, spaces, dots, leading zeros, O for 0, I and l for 1. */
function bareForm(code: string): string {
  return code
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .replace(/o/g, '0')
    .replace(/[il]/g, '1')
    .replace(/(?<!\d)0+(?=\d)/g, '')
    .replace(/ /g, '');
}

/** Whether one letter put in, left out, changed, or two neighbours swapped make one text of the other. */
function isOneSlipAway(a: string, b: string): boolean {
  let start = 0;
  while (start < a.length && start < b.length && a[start] === b[start]) start++;
  let endA = a.length;
  let endB = b.length;
  while (endA > start && endB > start && a[endA - 1] === b[endB - 1]) {
    endA--;
    endB--;
  }
  const restA = endA - start;
  const restB = endB - start;
  if (restA <= 1 && restB <= 1) return true;
  return restA === 2 && restB === 2 && a[start] === b[start + 1] && a[start + 1] === b[start];
}
