import { resolve } from 'node:path';

/** A bucket that speaks the protocol of S3. */
export interface BucketSettings {
  /** Address of its service; null: that of Amazon in the region. */
  readonly endpoint: string | null;
  readonly bucket: string;
  readonly region: string;
  readonly accessKey: string;
  readonly secretKey: string;
}

/** Where the files of evidence and photographs lie, and how large they may be. */
export interface FileSettings {
  /** Folder of the files, absolute; not used with a bucket. */
  readonly filesDir: string;
  /** The bucket that holds them, or null: then they lie in filesDir. */
  readonly filesBucket: BucketSettings | null;
  /** Largest document that is taken, in bytes. */
  readonly documentBytes: number;
  /** Largest picture that is taken, as it comes from the camera, in bytes. */
  readonly pictureBytes: number;
}

/** Reads what is set of files; each mistake is added to `mistakes`. */
export function readFileSettings(
  value: (name: string) => string | undefined,
  dataDir: string,
  mistakes: string[],
): FileSettings {
  return {
    filesDir: resolve(value('FILES_DIR') ?? `${dataDir}/files`),
    filesBucket: readBucket(value, mistakes),
    documentBytes: megabytes('DOCUMENT_MB', value('DOCUMENT_MB') ?? '20', mistakes),
    pictureBytes: megabytes('PICTURE_MB', value('PICTURE_MB') ?? '25', mistakes),
  };
}

function readBucket(value: (name: string) => string | undefined, mistakes: string[]): BucketSettings | null {
  const bucket = value('S3_BUCKET');
  const endpoint = value('S3_ENDPOINT') ?? null;
  const [accessKey, secretKey] = [value('S3_ACCESS_KEY'), value('S3_SECRET_KEY')];
  if (bucket === undefined) {
    const others = ['S3_ENDPOINT', 'S3_REGION', 'S3_ACCESS_KEY', 'S3_SECRET_KEY'].filter((name) => value(name));
    if (others.length > 0)
      mistakes.push(`${others.join(', ')} without S3_BUCKET: name the bucket too, or leave them all out.`);
    return null;
  }
  if (!/^[a-z0-9][a-z0-9.-]{1,61}[a-z0-9]$/.test(bucket))
    mistakes.push('S3_BUCKET must have 3 to 63 small letters, digits, dots and hyphens.');
  if (endpoint !== null && !isHttpAddress(endpoint))
    mistakes.push('S3_ENDPOINT must be the http or https address of the service, like https://s3.example.org.');
  if (accessKey === undefined || secretKey === undefined)
    mistakes.push('S3_BUCKET needs S3_ACCESS_KEY and S3_SECRET_KEY of a user who may read and write in it.');
  const region = value('S3_REGION') ?? 'us-east-1';
  if (!/^[\w-]{1,40}$/.test(region)) mistakes.push(`S3_REGION is "${region}"; give a name like eu-central-1.`);
  return { endpoint, bucket, region, accessKey: accessKey ?? '', secretKey: secretKey ?? '' };
}

function megabytes(name: string, text: string, mistakes: string[]): number {
  if (!/^\d{1,3}$/.test(text) || Number(text) < 1 || Number(text) > 100)
    mistakes.push(`${name} is "${text}"; give a number of megabytes from 1 to 100.`);
  return Number(text) * 1_000_000;
}

function isHttpAddress(text: string): boolean {
  if (!URL.canParse(text)) return false;
  const { protocol, username, search, hash } = new URL(text);
  return ['http:', 'https:'].includes(protocol) && username === '' && search === '' && hash === '';
}
