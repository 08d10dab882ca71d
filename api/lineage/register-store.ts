import { sexes, statuses, type LabelKind, type SourceKind } from '../../shared/vocabulary.ts';
import type { BinaryRow } from './binary-rows.ts';
import { Column } from './column.ts';
import { IdTable, type IdTableParts } from './id-table.ts';
import type { ParentPairs } from './parent-rows.ts';
import { RegisterClaims, type ClaimsOfRecords } from './register-claims.ts';
import { REMOVED, WITHDRAWN, type LineNode, type RegisterGraph, type SourceNode } from './register-graph.ts';
import { SerialTable } from './serial-table.ts';

/** The register as a thread hands it over. */
export interface StoreParts {
  readonly individuals: IdTableParts;
  readonly clutches: IdTableParts;
  readonly sources: readonly SourceNode[];
  readonly lines: readonly LineNode[];
  readonly claims: ClaimsOfRecords;
  readonly serials: Float64Array;
  readonly sexCodes: Uint8Array;
  readonly statusCodes: Uint8Array;
  readonly clutchOf: Int32Array;
  readonly sourceOf: Int32Array;
  readonly lineOf: Int32Array;
  readonly withdrawn: Uint8Array;
  readonly pairs: ParentPairs;
}

/**
 * The register in memory, led from one state to the next. What it showed of a state never changes (`Column`), so that a
 * computation under way keeps its own.
 */
export class RegisterStore {
  readonly individuals: IdTable;
  readonly clutches: IdTable;
  readonly claims: RegisterClaims;
  readonly #bySerial = new SerialTable();
  readonly #sourceIds = new IdTable();
  readonly #lineIds = new IdTable();
  #sources: SourceNode[] = [];
  #lines: LineNode[] = [];
  /** Animals of each line, ascending; made when first wanted and led on from then. */
  #members: Map<number, Int32Array> | null = null;
  /** Whether the map of members was handed out as it is. */
  #areMembersShown = false;
  /** Whether somebody may hold the lists of sources and lines as they are. */
  #isShown = false;
  readonly #serials: Column<Float64Array>;
  readonly #sexCodes: Column<Uint8Array>;
  readonly #statusCodes: Column<Uint8Array>;
  readonly #clutchOf: Column<Int32Array>;
  readonly #sourceOf: Column<Int32Array>;
  readonly #lineOf: Column<Int32Array>;
  readonly #withdrawn: Column<Uint8Array>;
  readonly #jointPairs: Column<Uint8Array>;
  #pairStart: Column<Int32Array>;
  #pairSire: Column<Int32Array>;
  #pairDam: Column<Int32Array>;
  #pairProbability: Column<Float64Array>;

  /** @param parts what a thread has read; without them the register is empty */
  constructor(parts?: StoreParts) {
    this.individuals = parts ? IdTable.of(parts.individuals) : new IdTable();
    this.clutches = parts ? IdTable.of(parts.clutches) : new IdTable();
    this.claims = new RegisterClaims(parts?.claims);
    for (const source of parts?.sources ?? []) this.putSource(source);
    for (const line of parts?.lines ?? []) this.putLine(line);
    this.#serials = new Column(Float64Array, 64, parts?.serials);
    this.#sexCodes = new Column(Uint8Array, 64, parts?.sexCodes);
    this.#statusCodes = new Column(Uint8Array, 64, parts?.statusCodes);
    this.#clutchOf = new Column(Int32Array, 64, parts?.clutchOf);
    this.#sourceOf = new Column(Int32Array, 64, parts?.sourceOf);
    this.#lineOf = new Column(Int32Array, 64, parts?.lineOf);
    this.#withdrawn = new Column(Uint8Array, 64, parts?.withdrawn);
    this.#jointPairs = new Column(Uint8Array, 64, parts?.pairs.jointPairs);
    this.#pairStart = new Column(Int32Array, 64, parts?.pairs.pairStart);
    this.#pairSire = new Column(Int32Array, 64, parts?.pairs.pairSire);
    this.#pairDam = new Column(Int32Array, 64, parts?.pairs.pairDam);
    this.#pairProbability = new Column(Float64Array, 64, parts?.pairs.pairProbability);
    if (!parts) this.#pairStart.push(0);
    parts?.serials.forEach((serial, number) => this.#bySerial.set(serial, number));
  }

  /** What a thread hands over. */
  get parts(): StoreParts {
    const { sources, lines, claims, serials, sexCodes, statusCodes, lineOf, withdrawn, pedigree, jointPairs } =
      this.show();
    const { clutchOf, sourceOf, pairStart, pairSire, pairDam, pairProbability } = pedigree;
    const pairs = { pairStart, pairSire, pairDam, pairProbability, jointPairs };
    const ids = { individuals: this.individuals.parts, clutches: this.clutches.parts };
    return {
      ...ids,
      sources,
      lines,
      claims,
      serials,
      sexCodes,
      statusCodes,
      clutchOf,
      sourceOf,
      lineOf,
      withdrawn,
      pairs,
    };
  }

  get individualCount(): number {
    return this.#clutchOf.length;
  }

  get clutchCount(): number {
    return this.#jointPairs.length;
  }

  clutchOf(individual: number): number {
    return this.#clutchOf.at(individual);
  }

  sourceOf(individual: number): number {
    return this.#sourceOf.at(individual);
  }

  /** Dense number of a source; −1 where it is unknown. */
  sourceNumber(id: string): number {
    return this.#sourceIds.find(id);
  }

  /** Dense number of a line; −1 where it is unknown. */
  lineNumber(id: string): number {
    return this.#lineIds.find(id);
  }

  /** Adds a source or takes it as it is now; gives it as it was before, null where it is new. */
  putSource(source: SourceNode): SourceNode | null {
    this.#touchLists();
    const found = this.#sourceIds.find(source.id);
    const number = found < 0 ? this.#sourceIds.add(source.id) : found;
    const before = this.#sources[number] ?? null;
    this.#sources[number] = source;
    return before;
  }

  /** Adds a line or takes it as it is now. */
  putLine(line: LineNode): void {
    this.#touchLists();
    const found = this.#lineIds.find(line.id);
    this.#lines[found < 0 ? this.#lineIds.add(line.id) : found] = line;
  }

  #touchLists(): void {
    if (!this.#isShown) return;
    this.#sources = [...this.#sources];
    this.#lines = [...this.#lines];
    this.#isShown = false;
  }

  /** Dense number of the clutch whose id stands in a row; a new one has no known parents yet. */
  putClutch(row: BinaryRow, field: number): number {
    const found = this.clutches.findBytes(row.bytes, row.at(field));
    if (found >= 0) return found;
    const number = this.clutches.addBytes(row.bytes, row.at(field));
    this.#jointPairs.push(0);
    return number;
  }

  /** Adds an animal or takes it as it is now; a row as of `forEachIndividual`. Gives its dense number. */
  putIndividual(row: BinaryRow): number {
    const line = row.isNull(4) ? -1 : this.#known(this.#lineIds.findBytes(row.bytes, row.at(4)), row, 4);
    const clutch = row.isNull(5) ? -1 : this.#known(this.clutches.findBytes(row.bytes, row.at(5)), row, 5);
    const source = row.isNull(6) ? -1 : this.#known(this.#sourceIds.findBytes(row.bytes, row.at(6)), row, 6);
    const serial = row.integer(1);
    let number = this.individuals.findBytes(row.bytes, row.at(0));
    const isNew = number < 0;
    if (isNew) number = this.individuals.addBytes(row.bytes, row.at(0));
    this.#bySerial.set(serial, number);
    this.#moveToLine(number, isNew ? -1 : this.#lineOf.at(number), line);
    const put = (column: Column<Int32Array> | Column<Uint8Array> | Column<Float64Array>, value: number): void =>
      isNew ? column.push(value) : column.set(number, value);
    put(this.#serials, serial);
    put(this.#sexCodes, codeOf(sexes, row.letter(2)));
    put(this.#statusCodes, codeOf(statuses, row.letter(3)));
    put(this.#clutchOf, clutch);
    put(this.#sourceOf, source);
    put(this.#lineOf, line);
    put(this.#withdrawn, row.boolean(7) ? WITHDRAWN : 0);
    return number;
  }

  #known(number: number, row: BinaryRow, field: number): number {
    if (number < 0)
      throw new Error(`record ${row.id(field)} is missing from its table: the register was not read in one state`);
    return number;
  }

  /** Empties the number of an animal whose row is gone: a founder of unknown origin that nobody descends from. */
  removeIndividual(number: number): void {
    this.#moveToLine(number, this.#lineOf.at(number), -1);
    this.#clutchOf.set(number, -1);
    this.#sourceOf.set(number, -1);
    this.#lineOf.set(number, -1);
    this.#withdrawn.set(number, REMOVED);
  }

  #moveToLine(individual: number, from: number, to: number): void {
    if (this.#members === null || from === to) return;
    // what was shown is left as it is: the map is copied once, and no list is ever written
    if (this.#areMembersShown) this.#members = new Map(this.#members);
    this.#areMembersShown = false;
    const members = this.#members;
    const listOf = (line: number): Int32Array => members.get(line) ?? new Int32Array(0);
    if (from >= 0)
      members.set(
        from,
        listOf(from).filter((other) => other !== individual),
      );
    if (to >= 0) members.set(to, withMember(listOf(to), individual));
  }

  /**
   * Takes the parents of some clutches.
   *
   * @param clutches dense numbers, ascending, each once; new ones must all be there
   * @param parents their pairs, in the same order
   */
  putParents(clutches: Int32Array, parents: ParentPairs): void {
    const known = this.#pairStart.length - 1;
    if (clutches.some((clutch) => clutch < known)) this.#replaceParents(clutches, parents, known);
    clutches.forEach((clutch, place) => {
      this.#jointPairs.set(clutch, parents.jointPairs[place] ?? 0);
      if (clutch >= known) this.#appendParents(parents, place);
    });
  }

  #appendParents({ pairStart, pairSire, pairDam, pairProbability }: ParentPairs, place: number): void {
    for (let pair = pairStart[place] ?? 0; pair < (pairStart[place + 1] ?? 0); pair++) {
      this.#pairSire.push(pairSire[pair] ?? -1);
      this.#pairDam.push(pairDam[pair] ?? -1);
      this.#pairProbability.push(pairProbability[pair] ?? 0);
    }
    this.#pairStart.push(this.#pairSire.length);
  }

  /** Lays all pairs out anew, with those of some known clutches exchanged. */
  #replaceParents(clutches: Int32Array, parents: ParentPairs, known: number): void {
    const placeOf = new Map(Array.from(clutches, (clutch, place) => [clutch, place]));
    const old = {
      pairStart: this.#pairStart.show(),
      pairSire: this.#pairSire.show(),
      pairDam: this.#pairDam.show(),
      pairProbability: this.#pairProbability.show(),
      jointPairs: this.#jointPairs.show(),
    };
    this.#pairStart = new Column(Int32Array, old.pairStart.length + 64);
    this.#pairSire = new Column(Int32Array, old.pairSire.length + 64);
    this.#pairDam = new Column(Int32Array, old.pairSire.length + 64);
    this.#pairProbability = new Column(Float64Array, old.pairSire.length + 64);
    this.#pairStart.push(0);
    for (let clutch = 0; clutch < known; clutch++) {
      const place = placeOf.get(clutch);
      if (place === undefined) this.#appendParents(old, clutch);
      else this.#appendParents(parents, place);
    }
  }

  /** The animals of each line as they are now, withdrawn ones among them. */
  showMembers(): ReadonlyMap<number, Int32Array> {
    this.#areMembersShown = true;
    return (this.#members ??= gatherMembers(this.#lineOf.show()));
  }

  /** The register as it is now. */
  show(): RegisterGraph {
    this.#isShown = true;
    return {
      pedigree: {
        clutchOf: this.#clutchOf.show(),
        sourceOf: this.#sourceOf.show(),
        baseKinship: Float64Array.from(this.#sources, ({ baseKinship }) => baseKinship),
        pairStart: this.#pairStart.show(),
        pairSire: this.#pairSire.show(),
        pairDam: this.#pairDam.show(),
        pairProbability: this.#pairProbability.show(),
      },
      individuals: this.individuals,
      clutches: this.clutches,
      bySerial: this.#bySerial,
      sources: this.#sources,
      lines: this.#lines,
      claims: this.claims.show(),
      serials: this.#serials.show(),
      sexCodes: this.#sexCodes.show(),
      statusCodes: this.#statusCodes.show(),
      lineOf: this.#lineOf.show(),
      withdrawn: this.#withdrawn.show(),
      jointPairs: this.#jointPairs.show(),
    };
  }
}

/** A list with one more animal, ascending. */
function withMember(list: Int32Array, individual: number): Int32Array {
  const longer = new Int32Array(list.length + 1);
  longer.set(list);
  longer[list.length] = individual;
  return (list.at(-1) ?? -1) < individual ? longer : longer.sort();
}

/** By counting, in two passes without an object for any animal. */
function gatherMembers(lineOf: Int32Array): Map<number, Int32Array> {
  const counts = new Int32Array(lineOf.reduce((most, line) => Math.max(most, line), -1) + 1);
  for (const line of lineOf) if (line >= 0) counts[line] = (counts[line] ?? 0) + 1;
  const lists = Array.from(counts, (count) => new Int32Array(count));
  counts.fill(0);
  lineOf.forEach((line, individual) => {
    const list = lists[line];
    const place = counts[line] ?? 0;
    if (!list) return;
    list[place] = individual;
    counts[line] = place + 1;
  });
  return new Map(lists.entries());
}

/** Place of a word in its vocabulary, told by its first letter; all words of a vocabulary begin with letters of their own. */
function codeOf(vocabulary: readonly string[], letter: number): number {
  for (let code = 0; code < vocabulary.length; code++) if (vocabulary[code]?.charCodeAt(0) === letter) return code;
  throw new Error(`the register holds a word that begins with ${String.fromCharCode(letter)} and is in no vocabulary`);
}

/** A source out of a row as of `forEachSource`. */
export function sourceOfRow(row: BinaryRow): SourceNode {
  return {
    id: row.id(0),
    kind: row.text(1) as SourceKind,
    labelAsReceived: row.text(2),
    baseKinship: row.float(3),
  };
}

/** A line out of a row as of `forEachLine`. */
export function lineOfRow(row: BinaryRow): LineNode {
  return { id: row.id(0), name: row.text(1) ?? '', labelKind: row.text(2) as LabelKind };
}
