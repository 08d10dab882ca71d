import { buffer } from 'node:stream/consumers';
import { Inject, Injectable } from '@nestjs/common';
import { FileStore } from '../../platform/file-store.ts';
import { smallPicture } from './picture.ts';
import { PictureTurns } from './picture-turns.ts';

/** How many small pictures are held; each has some fifty kilobytes. */
const heldMost = 400;

/** Small pictures, made when somebody first wants them, and held while they are wanted. A picture under a hash never changes. */
@Injectable()
export class SmallPictures {
  readonly #held = new Map<string, Promise<Buffer>>();

  constructor(
    @Inject(FileStore) private readonly store: FileStore,
    @Inject(PictureTurns) private readonly turns: PictureTurns,
  ) {}

  /** The small JPEG of the picture under a hash. @throws StoreProblem */
  async get(hash: string): Promise<Buffer> {
    const held = this.#held.get(hash) ?? this.make(hash);
    // the one that was wanted last is given up last
    this.#held.delete(hash);
    this.#held.set(hash, held);
    const oldest = this.#held.keys().next();
    if (this.#held.size > heldMost && !oldest.done) this.#held.delete(oldest.value);
    return held.catch((error: unknown) => {
      this.#held.delete(hash);
      throw error;
    });
  }

  private make(hash: string): Promise<Buffer> {
    return this.turns.take(async () => smallPicture(await buffer(await this.store.get(hash))));
  }
}
