import type { Readable } from 'node:stream';
import { GetObjectCommand, HeadObjectCommand, PutObjectCommand, S3Client } from '@aws-sdk/client-s3';
import type { BucketSettings } from './file-settings.ts';
import { FileStore, missingFile, StoreProblem } from './file-store.ts';
import { say } from './say.ts';

/** Files in a bucket that speaks the protocol of S3, each under its hash. */
export class BucketStore extends FileStore {
  readonly #client: S3Client;
  readonly #bucket: string;

  constructor({ endpoint, bucket, region, accessKey, secretKey }: BucketSettings) {
    super();
    this.#bucket = bucket;
    this.#client = new S3Client({
      region,
      ...(endpoint === null ? {} : { endpoint, forcePathStyle: true }),
      credentials: { accessKeyId: accessKey, secretAccessKey: secretKey },
      // services of other makers know the signed hash of a body, but not all know checksums beside it
      requestChecksumCalculation: 'WHEN_REQUIRED',
      responseChecksumValidation: 'WHEN_REQUIRED',
      maxAttempts: 3,
      requestHandler: { connectionTimeout: 5_000, requestTimeout: 30_000 },
    });
  }

  override async put(hash: string, bytes: Uint8Array): Promise<void> {
    try {
      await this.#client.send(
        new PutObjectCommand({ Bucket: this.#bucket, Key: hash, Body: bytes, ContentLength: bytes.length }),
      );
    } catch (error) {
      throw new StoreProblem(say`The file could not be stored. Nothing was written; try again in a moment.`, error);
    }
  }

  override async get(hash: string): Promise<Readable> {
    try {
      const { Body: body } = await this.#client.send(new GetObjectCommand({ Bucket: this.#bucket, Key: hash }));
      if (body === undefined) throw missingFile();
      return body as Readable; // under Node it is always a stream of this kind
    } catch (error) {
      if (isMissing(error)) throw missingFile();
      throw new StoreProblem(say`The file could not be read. Try again in a moment.`, error);
    }
  }

  override async has(hash: string): Promise<boolean> {
    try {
      await this.#client.send(new HeadObjectCommand({ Bucket: this.#bucket, Key: hash }));
      return true;
    } catch (error) {
      if (isMissing(error)) return false;
      throw new StoreProblem(say`The place where files are kept does not answer. Try again in a moment.`, error);
    }
  }
}

const isMissing = (error: unknown): boolean => error instanceof Error && ['NoSuchKey', 'NotFound'].includes(error.name);
