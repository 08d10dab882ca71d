import { Inject, Injectable } from '@nestjs/common';
import { fileTypeFromBuffer } from 'file-type';
import type { EntityManager } from 'typeorm';
import { contentHash, FileStore } from '../../platform/file-store.ts';
import { longTaskModule } from '../../platform/long-task.ts';
import { LongWork } from '../../platform/long-work.ts';
import { InvalidProblem } from '../../platform/problem.ts';
import { settingsKey, type Settings } from '../../platform/settings.ts';
import { FileFault, tooLarge, wrongKind } from './file-fault.ts';
import { remakePicture } from './picture.ts';
import { PictureTurns } from './picture-turns.ts';
import type { ReceivedFile } from './received-file.ts';
import { StoredFile } from './stored-file.entity.ts';
import { say } from '../../platform/say.ts';

const checkPdf = longTaskModule<Uint8Array, string | null>('./pdf-check.task.ts', import.meta.url);

/** What the store holds now, and no row names yet. */
export type TakenFile = Omit<StoredFile, 'createdAt'>;

/** Takes files in: looks at what they are, makes pictures anew, and stores the bytes. */
@Injectable()
export class FileIntake {
  constructor(
    @Inject(FileStore) private readonly store: FileStore,
    @Inject(PictureTurns) private readonly turns: PictureTurns,
    @Inject(LongWork) private readonly work: LongWork,
    @Inject(settingsKey) private readonly settings: Settings,
  ) {}

  /**
   * Takes in a photograph: a picture. 415 for what is no picture, 413, 422 for a damaged one; all say what to do.
   */
  async takePhotograph(file: ReceivedFile): Promise<TakenFile> {
    return this.keep(await this.picture(file, 'photograph', await kindOf(file)));
  }

  /** Takes in a paper: a PDF or a picture of one. Errors as for a photograph, and 422 for a PDF that is more than a paper. */
  async takePaper(file: ReceivedFile): Promise<TakenFile> {
    const kind = await kindOf(file);
    return this.keep(kind === 'application/pdf' ? await this.pdf(file) : await this.picture(file, 'paper', kind));
  }

  private async pdf({ bytes, pointer }: ReceivedFile): Promise<Content> {
    const most = this.settings.documentBytes;
    if (bytes.length > most)
      throw tooLarge(say`A PDF`, most, say`Scan it with fewer points per inch, or divide it.`, pointer);
    const fault = await this.work.run(checkPdf, new Uint8Array(bytes));
    if (fault !== null) throw new InvalidProblem(fault, [{ pointer, detail: fault }]);
    return { bytes, mediaType: 'application/pdf', width: null, height: null };
  }

  private async picture(file: ReceivedFile, use: 'photograph' | 'paper', kind: string): Promise<Content> {
    const { bytes, pointer } = file;
    if (!pictureKinds.includes(kind)) throw wrongKind(whatInstead(kind, use), pointer);
    const most = this.settings.pictureBytes;
    if (bytes.length > most) throw tooLarge(say`A picture`, most, say`Save it smaller, then send that.`, pointer);
    try {
      return await this.turns.take(() => remakePicture(bytes, use));
    } catch (error) {
      if (!(error instanceof FileFault)) throw error;
      throw new InvalidProblem(error.message, [{ pointer, detail: error.message }]);
    }
  }

  private async keep({ bytes, ...content }: Content): Promise<TakenFile> {
    const hash = contentHash(bytes);
    await this.store.put(hash, bytes);
    return { hash, bytes: bytes.length, ...content };
  }
}

/** Enters the row of a file, in the transaction of the record that names it. */
export async function noteFile(manager: EntityManager, file: TakenFile): Promise<void> {
  await manager.createQueryBuilder().insert().into(StoredFile).values(file).orIgnore().execute();
}

interface Content {
  readonly bytes: Uint8Array;
  readonly mediaType: StoredFile['mediaType'];
  readonly width: number | null;
  readonly height: number | null;
}

/** What the library of pictures decodes here; of HEIF only the kind whose codec is free. */
const pictureKinds: readonly string[] = ['image/jpeg', 'image/png', 'image/webp', 'image/avif'];

/** The media type by the first bytes; an empty text where they tell none. */
async function kindOf({ bytes }: ReceivedFile): Promise<string> {
  return (await fileTypeFromBuffer(bytes))?.mime ?? '';
}

function whatInstead(kind: string, use: 'photograph' | 'paper'): string {
  if (/^image\/hei[cf]/.test(kind))
    return say`HEIC cannot be read here. Save the picture as JPEG (on an iPhone: Settings, Camera, Formats, Most Compatible), then send that.`;
  const found = kind === '' ? '' : say` (it is ${kind})`;
  return use === 'photograph'
    ? say`This file is no picture that can be taken${found}. Send a photograph as JPEG, PNG or WebP.`
    : say`This file is neither a PDF nor a picture that can be taken${found}. Send a PDF, or a picture as JPEG, PNG or WebP.`;
}
