import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { formatRegistryNumber, parseRegistryNumber } from '../../../shared/registry-number.ts';
import type { SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { verifySheet, type SheetVerdict } from '../../../shared/sheet/verify-sheet.ts';
import type { LineageSnapshot } from '../../lineage/lineage-snapshot.ts';
import { linksTo } from '../../lineage/ancestor-chart.ts';
import { RecordNames, WantedNames } from '../../lineage/record-names.ts';
import { readClutchNames, readIndividualNames, readSourceNames } from '../../lineage/record-names.queries.ts';
import { Snapshots } from '../../lineage/snapshots.service.ts';
import { FileStore } from '../../platform/file-store.ts';
import { NotFoundProblem, Problem } from '../../platform/problem.ts';
import { SmallPictures } from '../../provenance/files/small-pictures.ts';
import type { ServedFile } from '../../provenance/files/serve-file.ts';
import { SigningKeys } from '../signing-keys/signing-keys.service.ts';
import { asPublished } from './as-published.ts';
import { concealSince } from './conceal-sheet.ts';
import type { AnimalTodayView, PublicSheetView, SheetVerificationView } from './public-sheet.view.ts';
import { differencesOf } from './sheet-differences.ts';
import { readAnimalFacts, readPhotographFacts } from './sheet-facts.queries.ts';
import { stateInWords, verificationWords } from './sheet-state-words.ts';
import { findSheetByToken, findTokenOf, readStoredSheet } from './sheets.queries.ts';
import type { SheetView } from './sheets.view.ts';
import { say } from '../../platform/say.ts';

/** A sheet as it was found by its token. */
interface Found {
  readonly view: SheetView;
  readonly file: Buffer;
  readonly verdict: SheetVerdict;
  readonly contents: SheetDocument | null;
  readonly isWhole: boolean;
  readonly today: AnimalTodayView[];
}

/** Tells whoever holds a sheet, or its address, what it is and what the register says today. */
@Injectable()
export class PublicSheetsService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(Snapshots) private readonly snapshots: Snapshots,
    @Inject(SigningKeys) private readonly keys: SigningKeys,
    @Inject(FileStore) private readonly store: FileStore,
    @Inject(SmallPictures) private readonly small: SmallPictures,
  ) {}

  /** A sheet by the token of its address; the same whoever asks. 404 where there is none. */
  async get(token: string): Promise<PublicSheetView> {
    const { view, verdict, contents, isWhole, today } = await this.#find(token);
    const { sheet } = verdict;
    return {
      number: view.number,
      register: sheet?.issuer.register ?? '',
      isInvented: sheet?.issuer.invented ?? false,
      issued: view.issued,
      validUntil: view.validUntil,
      outcome: verdict.outcome,
      state: view.state,
      words: `${verdict.words} ${stateInWords(view)}`,
      revoked: view.revoked,
      newer: view.newer,
      keyId: view.keyId,
      contents,
      hasFile: contents !== null && isWhole,
      today,
    };
  }

  /** The signed file; 404 where there is no such sheet, 410 where it is given out no more. */
  async file(token: string): Promise<{ number: string; bytes: Buffer }> {
    const { view, file, contents, isWhole } = await this.#find(token);
    if (contents === null || !isWhole)
      throw new Problem(
        'gone',
        410,
        say`Not given out any more`,
        say`This file is not given out here any more: the sheet was revoked, or something in it has become private. A file that you have can still be checked.`,
      );
    return { number: view.number, bytes: file };
  }

  /** A photograph that stands on a sheet, small or whole; 404 where it does not, or the animal is told of no more. */
  async photograph(token: string, sha256: string, size: 'small' | 'whole'): Promise<ServedFile> {
    const { view, contents } = await this.#find(token);
    const animal = contents?.animals.find(({ photographs }) => photographs.some((one) => one.sha256 === sha256));
    const ids = view.animals.map(({ id }) => id);
    const held = animal ? await asPublished(() => readPhotographFacts(this.dataSource.manager, ids)) : [];
    if (!animal || !held.some(({ hash }) => hash === sha256)) throw new NotFoundProblem(say`photograph`, sha256);
    const name = `animal-${animal.number}`;
    return size === 'small'
      ? { mediaType: 'image/jpeg', name, tag: `${sha256}-small`, isLasting: false, open: () => this.small.get(sha256) }
      : { mediaType: 'image/jpeg', name, tag: sha256, isLasting: false, open: () => this.store.get(sha256) };
  }

  /** What a file is, whoever made it. */
  async verify(bytes: Uint8Array): Promise<SheetVerificationView> {
    const keys = await this.keys.known();
    const verdict = await verifySheet(bytes, keys);
    const { outcome, sheet, kid } = verdict;
    const isOurs = keys.some((key) => key.kid === kid) && ['genuine', 'expired'].includes(outcome);
    const serial = parseRegistryNumber(sheet?.number.replace(/^PS-/u, '') ?? '');
    const { manager } = this.dataSource;
    const token = isOurs && serial !== null ? await findTokenOf(manager, String(serial), bytes) : null;
    const view = token === null ? null : await asPublished(() => findSheetByToken(manager, token));
    const whose = isOurs ? 'this-register' : outcome === 'unknown-key' ? 'another-register' : 'unknown';
    return {
      outcome,
      whose,
      words: verificationWords(verdict, whose, view),
      number: sheet?.number ?? null,
      issuer: sheet?.issuer.register ?? null,
      issuerAddress: sheet?.issuer.address ?? null,
      state: view?.state ?? null,
      lookUp: view?.lookUp ?? null,
    };
  }

  #find(token: string): Promise<Found> {
    return asPublished(async () => {
      const { manager } = this.dataSource;
      const view = /^[\w-]{24}$/u.test(token) ? await findSheetByToken(manager, token) : null;
      if (!view) throw new NotFoundProblem(say`sheet`, token);
      const { file, records } = await readStoredSheet(manager, view.id);
      const verdict = await verifySheet(file, await this.keys.known());
      const { sheet } = verdict;
      // what the database holds was signed by us; if it is not, the verdict says so, and nothing of it is told
      if (!sheet || view.state === 'revoked' || !['genuine', 'expired'].includes(verdict.outcome))
        return { view, file, verdict, contents: null, isWhole: false, today: [] };
      const today = await this.#today(sheet, records);
      if (today.some(({ isTold }) => !isTold)) return { view, file, verdict, contents: null, isWhole: false, today };
      const { contents, isWhole } = concealSince(sheet, await this.#told(records));
      return { view, file, verdict, contents, isWhole, today };
    });
  }

  async #today(sheet: SheetDocument, records: Readonly<Record<string, string>>): Promise<AnimalTodayView[]> {
    const { manager } = this.dataSource;
    const snapshot = await this.snapshots.current();
    const ids = sheet.animals.map(({ ref }) => records[ref] ?? '');
    const facts = new Map((await readAnimalFacts(manager, ids)).map((one) => [one.id, one]));
    const names = await RecordNames.read(manager, snapshot.graph, parentsToday(snapshot, ids));
    return sheet.animals.map((animal, place): AnimalTodayView => {
      const now = facts.get(ids[place] ?? '');
      const individual = snapshot.find(ids[place] ?? '');
      if (!now || (now.isWithdrawn && now.mergedInto === null) || individual < 0)
        return { number: null, isTold: false, continuesAs: null, differences: [] };
      const continuesAs = now.mergedInto === null ? null : formatRegistryNumber(now.mergedInto);
      const differences = continuesAs === null ? differencesOf(animal, sheet, now, snapshot, individual, names) : [];
      return { number: animal.number, isTold: true, continuesAs, differences };
    });
  }

  /** The references of records that may be told today. */
  async #told(records: Readonly<Record<string, string>>): Promise<ReadonlySet<string>> {
    const { manager } = this.dataSource;
    const idsOf = (kind: string): string[] =>
      Object.entries(records).flatMap(([ref, id]) => (ref.startsWith(kind) ? [id] : []));
    const [individuals, clutches, sources] = await Promise.all([
      readIndividualNames(manager, idsOf('a')),
      readClutchNames(manager, idsOf('c')),
      readSourceNames(manager, idsOf('s')),
    ]);
    const told = new Set([...individuals, ...clutches, ...sources].map(({ id }) => id));
    return new Set(Object.entries(records).flatMap(([ref, id]) => (told.has(id) ? [ref] : [])));
  }
}

function parentsToday(snapshot: LineageSnapshot, ids: readonly string[]): WantedNames {
  const wanted = new WantedNames();
  for (const id of ids) {
    const clutch = snapshot.graph.pedigree.clutchOf[snapshot.find(id)] ?? -1;
    if (clutch >= 0) for (const { parent } of linksTo(snapshot.graph, clutch)) wanted.individuals.add(parent);
  }
  return wanted;
}
