/** A sire and a dam that are to breed together, by any numbers. */
export interface ProposedPair {
  readonly sire: number;
  readonly dam: number;
}

/** Animals that live together to breed, by any numbers. Unsexed ones stand here only where no sex is known of the group. */
export interface BreedingGroup {
  readonly sires: readonly number[];
  readonly dams: readonly number[];
  readonly unsexed: readonly number[];
}

/**
 * Who breeds with whom, apart from which animals they are: places for sires and dams, and the clutches that they have in a generation.
 * The next generation fills the same places with its young.
 */
export interface BreedingScheme {
  /** How many places there are for sires, and for dams. */
  readonly sires: number;
  readonly dams: number;
  /** For each clutch: the place of its dam. */
  readonly damOf: Int32Array;
  /** Clutches + 1: the possible sires of clutch c are siresOf[sireStart[c]] .. siresOf[sireStart[c+1] − 1], each as likely. */
  readonly sireStart: Int32Array;
  /** Places of sires. */
  readonly siresOf: Int32Array;
  /** For each clutch: the group that it belongs to; a pair is a group of its own. */
  readonly groupOf: Int32Array;
}

/** A scheme with the animals that fill its places in the first generation. */
export interface FilledScheme {
  readonly scheme: BreedingScheme;
  readonly sires: Int32Array;
  readonly dams: Int32Array;
}

/** The scheme of chosen pairs: every animal breeds in as many of them as it stands in. */
export function schemeOfPairs(pairs: readonly ProposedPair[]): FilledScheme {
  const sires = [...new Set(pairs.map(({ sire }) => sire))];
  const dams = [...new Set(pairs.map(({ dam }) => dam))];
  const sirePlace = new Map(sires.map((sire, place) => [sire, place]));
  const damPlace = new Map(dams.map((dam, place) => [dam, place]));
  return {
    scheme: {
      sires: sires.length,
      dams: dams.length,
      damOf: Int32Array.from(pairs, ({ dam }) => damPlace.get(dam) ?? -1),
      sireStart: Int32Array.from({ length: pairs.length + 1 }, (_, clutch) => clutch),
      siresOf: Int32Array.from(pairs, ({ sire }) => sirePlace.get(sire) ?? -1),
      groupOf: Int32Array.from(pairs.keys()),
    },
    sires: Int32Array.from(sires),
    dams: Int32Array.from(dams),
  };
}

/**
 * The scheme of groups: each dam has one clutch, by any sire of her group. Of a group of unsexed animals half, rounded down, are taken for
 * sires; `dealt` says which, and is drawn anew each time.
 */
export function schemeOfGroups(groups: readonly BreedingGroup[]): FilledScheme {
  const sexed = groups.map(({ sires, dams, unsexed }) => {
    const half = unsexed.length >> 1;
    return { sires: [...sires, ...unsexed.slice(0, half)], dams: [...dams, ...unsexed.slice(half)] };
  });
  return {
    scheme: schemeOfSizes(sexed.map(({ sires, dams }) => ({ sires: sires.length, dams: dams.length }))),
    sires: Int32Array.from(sexed.flatMap(({ sires }) => sires)),
    dams: Int32Array.from(sexed.flatMap(({ dams }) => dams)),
  };
}

/** How many dams breed in some groups, and so how many clutches there are in a generation. */
export function dams(groups: readonly BreedingGroup[]): number {
  return groups.reduce((sum, group) => sum + group.dams.length + ((group.unsexed.length + 1) >> 1), 0);
}

/** How the groups go on: as many dams each, and as many sires as the dams' young kept can replace. */
export function laterScheme(groups: readonly BreedingGroup[], youngKept: number): BreedingScheme {
  return schemeOfSizes(
    groups.map(({ sires, dams, unsexed }) => {
      const size = { sires: sires.length + (unsexed.length >> 1), dams: dams.length + ((unsexed.length + 1) >> 1) };
      return { ...size, sires: Math.min(size.sires, size.dams * (youngKept >> 1)) };
    }),
  );
}

function schemeOfSizes(sizes: readonly { readonly sires: number; readonly dams: number }[]): BreedingScheme {
  const sireStart = [0];
  const siresOf: number[] = [];
  const groupOf: number[] = [];
  let sires = 0;
  sizes.forEach((size, group) => {
    for (let dam = 0; dam < size.dams; dam++) {
      for (let sire = 0; sire < size.sires; sire++) siresOf.push(sires + sire);
      sireStart.push(siresOf.length);
      groupOf.push(group);
    }
    sires += size.sires;
  });
  return {
    sires,
    dams: groupOf.length,
    damOf: Int32Array.from(groupOf.keys()),
    sireStart: Int32Array.from(sireStart),
    siresOf: Int32Array.from(siresOf),
    groupOf: Int32Array.from(groupOf),
  };
}

/**
 * Which young of a generation are males: of every clutch as many as females; where the number kept is odd, the clutches have the odd one in
 * turn.
 *
 * @param clutches how many there are
 * @returns places of the males and of the females, clutch by clutch; young k of clutch c has the place c · youngKept + k
 */
export function youngBySex(
  clutches: number,
  youngKept: number,
  generation: number,
): { males: Int32Array; females: Int32Array } {
  const males: number[] = [];
  const females: number[] = [];
  for (let clutch = 0; clutch < clutches; clutch++) {
    const male = (youngKept + ((clutch + generation) & 1)) >> 1;
    for (let young = 0; young < youngKept; young++) (young < male ? males : females).push(clutch * youngKept + young);
  }
  return { males: Int32Array.from(males), females: Int32Array.from(females) };
}
