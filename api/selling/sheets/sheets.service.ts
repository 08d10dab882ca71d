import { randomBytes } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { sheetCautions } from '../../../shared/sheet/cautions.ts';
import { readSheetDocument, type SheetDocument } from '../../../shared/sheet/sheet-document.ts';
import { signSheet } from '../../../shared/sheet/sheet-file.ts';
import { verifySheet } from '../../../shared/sheet/verify-sheet.ts';
import { readClub } from '../../people/people.queries.ts';
import { authorize } from '../../people/permissions.ts';
import type { Acting } from '../../platform/acting.ts';
import { isMatch, type VersionMatch } from '../../platform/etag.ts';
import { newId } from '../../platform/ids.ts';
import { writeEntry } from '../../platform/journal-entry.ts';
import type { Page } from '../../platform/paging.ts';
import { ConflictProblem, NotFoundProblem, StaleProblem } from '../../platform/problem.ts';
import { longTaskModule } from '../../platform/long-task.ts';
import { LongWork } from '../../platform/long-work.ts';
import { settingsKey, type Settings } from '../../platform/settings.ts';
import { inTransaction } from '../../platform/transaction.ts';
import { present } from '../../register/present.ts';
import type { SheetPaper } from '../tasks/sheet-paper.task.ts';
import { SigningKeys } from '../signing-keys/signing-keys.service.ts';
import { ProvenanceSheet, ProvenanceSheetAnimal } from './provenance-sheet.entity.ts';
import { SheetComposer, type Composed } from './sheet-composer.service.ts';
import { holdChosen, requireLastDay, resolveChosen, type Chosen } from './sheet-animals.ts';
import type { NewSheetRequest, SheetQuery } from './sheets.dto.ts';
import {
  findSheet,
  formatSheetNumber,
  holdSheet,
  listSheets,
  lookUpOf,
  nextSheet,
  readStoredSheet,
} from './sheets.queries.ts';
import type { SheetView } from './sheets.view.ts';
import { say } from '../../platform/say.ts';

/** How often a sheet is composed again because an animal was changed meanwhile. */
const ATTEMPTS = 3;

const onPaper = longTaskModule<SheetPaper, Uint8Array>('../tasks/sheet-paper.task.ts', import.meta.url);

/** Issues and revokes provenance sheets. */
@Injectable()
export class SheetsService {
  constructor(
    @Inject(DataSource) private readonly dataSource: DataSource,
    @Inject(settingsKey) private readonly settings: Pick<Settings, 'publicUrl'>,
    @Inject(SheetComposer) private readonly composer: SheetComposer,
    @Inject(SigningKeys) private readonly keys: SigningKeys,
    @Inject(LongWork) private readonly work: LongWork,
  ) {}

  /**
   * Makes and signs a sheet of animals of one keeper, as the register knows them at this moment. 403 where they are another's, 422 where an
   * animal cannot stand on it, 503 where the service has no key or the figures are being computed anew.
   */
  async issue(keeper: Acting, request: NewSheetRequest): Promise<SheetView> {
    requireLastDay(request.validUntil);
    const { manager } = this.dataSource;
    const { photographs = true } = request;
    await this.keys.ready();
    for (let attempt = 1; ; attempt++) {
      const chosen = await resolveChosen(manager, request.animals);
      const ids = chosen.map(({ id }) => id);
      const composed = await this.composer.compose(ids, { photographs });
      const view = await inTransaction(this.dataSource, async (held) =>
        (await holdChosen(held, chosen)) ? this.#sign(held, keeper, request, chosen, composed) : null,
      );
      if (view) return view;
      if (attempt === ATTEMPTS)
        throw new ConflictProblem(
          say`Somebody changes these animals at this moment. Look at them again, then make the sheet.`,
        );
    }
  }

  /** What is signed: what is said of the animals, under the name of this register. */
  async #document(
    manager: EntityManager,
    told: Omit<SheetDocument, 'format' | 'version' | 'issuer' | 'cautions'>,
  ): Promise<SheetDocument> {
    const club = await readClub(manager);
    return readSheetDocument({
      format: 'linekeeper-provenance-sheet',
      version: 1,
      issuer: { register: club?.name ?? '', address: this.settings.publicUrl, invented: club?.demo ?? false },
      ...told,
      cautions: [...sheetCautions],
    });
  }

  async #sign(
    manager: EntityManager,
    keeper: Acting,
    request: NewSheetRequest,
    chosen: readonly Chosen[],
    { records, ...contents }: Composed,
  ): Promise<SheetView> {
    const [key, { number, issued }] = [await this.keys.hold(manager), await nextSheet(manager)];
    const [first] = chosen;
    if (!first) throw new Error('a sheet has an animal');
    const token = randomBytes(18).toString('base64url');
    const { validUntil = null, keeperNamed = true } = request;
    const sheet = await this.#document(manager, {
      number: formatSheetNumber(number),
      issued: issued.toISOString(),
      validUntil,
      lookUp: lookUpOf(token, this.settings.publicUrl),
      keeper: keeperNamed && first.keeperId === keeper.id ? first.keeper : null,
      ...contents,
    });
    const id = newId();
    const file = Buffer.from(await signSheet(sheet, key), 'utf8');
    const row = {
      id,
      number,
      keeperId: first.keeperId,
      token,
      keyId: key.id,
      issuedAt: issued,
      validUntil,
      file,
      records,
    };
    await manager.insert(ProvenanceSheet, row);
    await manager.insert(
      ProvenanceSheetAnimal,
      chosen.map((animal, place) => ({ sheetId: id, individualId: animal.id, place: place + 1 })),
    );
    await writeEntry(manager, {
      action: 'added',
      kind: 'provenance_sheet',
      recordId: id,
      recordVersion: 1,
      ownerId: first.keeperId,
      visibility: 'private',
      before: null,
      after: { number: sheet.number, animals: contents.animals.map((animal) => animal.number), validUntil },
      aboutIds: chosen.map((animal) => animal.id),
    });
    return present(await findSheet(manager, id, this.settings.publicUrl), () => new NotFoundProblem(say`sheet`, id));
  }

  /** Sheets that whoever asks may see, the newest first. */
  list(query: SheetQuery): Promise<Page<SheetView>> {
    return listSheets(this.dataSource.manager, query, this.settings.publicUrl);
  }

  /** One sheet; 404 where there is none. */
  async get(id: string): Promise<SheetView> {
    const found = await findSheet(this.dataSource.manager, id, this.settings.publicUrl);
    return present(found, () => new NotFoundProblem(say`sheet`, id));
  }

  /** The very file of a sheet, and its number; 404 where there is none. */
  async file(id: string): Promise<{ number: string; bytes: Buffer }> {
    const { number } = await this.get(id);
    return { number, bytes: (await readStoredSheet(this.dataSource.manager, id)).file };
  }

  /** What a signed file says, as a PDF, written in a thread. @throws BusyProblem if too many computations wait */
  async paper(file: { number: string; bytes: Buffer }): Promise<{ number: string; bytes: Buffer }> {
    const { sheet, kid } = await verifySheet(file.bytes, await this.keys.known());
    if (!sheet || kid === null) throw new Error('a sheet of ours cannot be read');
    return { number: file.number, bytes: Buffer.from(await this.work.run(onPaper, { sheet, keyId: kid })) };
  }

  /** Revokes a sheet, for good: what was signed cannot be unsigned. 403, 404, 409 where it was revoked before, 412. */
  async revoke(id: string, match: VersionMatch, reason: string): Promise<SheetView> {
    return inTransaction(this.dataSource, async (manager) => {
      const held = present(await holdSheet(manager, id), () => new NotFoundProblem(say`sheet`, id));
      authorize('change', 'sheet', held);
      if (!isMatch(match, held.version)) throw new StaleProblem(await findSheet(manager, id, this.settings.publicUrl));
      if (held.isRevoked)
        throw new ConflictProblem(say`This sheet was revoked before. A new one can be made of its animals.`);
      const { version } = held;
      await manager.update(ProvenanceSheet, { id, version }, { revokedAt: new Date(), revokedReason: reason });
      const number = formatSheetNumber(held.number);
      await writeEntry(manager, {
        action: 'revoked',
        kind: 'provenance_sheet',
        recordId: id,
        recordVersion: version + 1,
        ownerId: held.keeperId,
        visibility: 'private',
        before: { number, revokedReason: null },
        after: { number, revokedReason: reason },
        reason,
      });
      return present(await findSheet(manager, id, this.settings.publicUrl), () => new NotFoundProblem(say`sheet`, id));
    });
  }
}
