import { createHash, createHmac } from 'node:crypto';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

/** A bucket in memory. */
export interface BucketServer {
  readonly url: string;
  readonly objects: Map<string, Buffer>;
  /** What was asked: method and path, in order. */
  readonly asked: string[];
  /** The status with which it fails every request; null while it works. */
  failing: number | null;
  close(): Promise<void>;
}

interface Credentials {
  readonly bucket: string;
  readonly region: string;
  readonly accessKey: string;
  readonly secretKey: string;
}

/**
 * Serves one bucket as S3 describes it: PUT, GET and HEAD of an object by path. Each request must be signed as AWS Signature Version 4
 * says; the signature is computed here anew from what arrived, and the body is held against the hash that was signed.
 */
export async function startBucketServer(credentials: Credentials): Promise<BucketServer> {
  const state: Omit<BucketServer, 'url' | 'close'> = { objects: new Map(), asked: [], failing: null };
  const server = createServer((request, response) => {
    void bodyOf(request).then((body) => answer(state, credentials, request, body, response));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return Object.assign(state, {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    close: () =>
      new Promise<void>((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  });
}

function answer(
  state: Omit<BucketServer, 'url' | 'close'>,
  credentials: Credentials,
  request: IncomingMessage,
  body: Buffer,
  response: ServerResponse,
): void {
  const url = new URL(request.url ?? '/', 'http://localhost');
  state.asked.push(`${request.method} ${url.pathname}`);
  const refuse = (status: number, code: string): void => {
    response.writeHead(status, { 'content-type': 'application/xml' });
    response.end(request.method === 'HEAD' ? '' : `<Error><Code>${code}</Code><Message>no</Message></Error>`);
  };
  const [, bucket, key = ''] = url.pathname.split('/');
  const object = state.objects.get(key);
  if (state.failing !== null) refuse(state.failing, 'SlowDown');
  else if (!isSignedBy(credentials, request, url, body)) refuse(403, 'SignatureDoesNotMatch');
  else if (bucket !== credentials.bucket) refuse(404, 'NoSuchBucket');
  else if (request.method === 'PUT') {
    state.objects.set(key, body);
    response.writeHead(200, { etag: `"${createHash('md5').update(body).digest('hex')}"` }).end();
  } else if (!object) refuse(404, 'NoSuchKey');
  else response.writeHead(200, { 'content-length': object.length }).end(request.method === 'HEAD' ? undefined : object);
}

/** AWS Signature Version 4: canonical request, string to sign, derived key. */
function isSignedBy(credentials: Credentials, request: IncomingMessage, url: URL, body: Buffer): boolean {
  const pattern = /^AWS4-HMAC-SHA256 Credential=([^,]+), ?SignedHeaders=([^,]+), ?Signature=([0-9a-f]{64})$/;
  const [, credential = '', names = '', signature] = pattern.exec(request.headers.authorization ?? '') ?? [];
  const [accessKey, day = '', region = '', service = ''] = credential.split('/');
  const bodyHash = String(request.headers['x-amz-content-sha256']);
  const isBodySigned = bodyHash === sha256(body);
  if (accessKey !== credentials.accessKey || region !== credentials.region || !isBodySigned) return false;
  const query = [...url.searchParams]
    .map(([name, value]) => `${encodeURIComponent(name)}=${encodeURIComponent(value)}`)
    .sort()
    .join('&');
  const headers = names.split(';').map((name) => `${name}:${String(request.headers[name]).trim()}\n`);
  const canonical = [request.method, url.pathname, query, headers.join(''), names, bodyHash].join('\n');
  const scope = [day, region, service, 'aws4_request'].join('/');
  const toSign = ['AWS4-HMAC-SHA256', String(request.headers['x-amz-date']), scope, sha256(canonical)].join('\n');
  const key = [day, region, service, 'aws4_request'].reduce<Buffer>(hmac, Buffer.from(`AWS4${credentials.secretKey}`));
  return hmac(key, toSign).toString('hex') === signature && names.split(';').includes('host');
}

const sha256 = (content: Buffer | string): string => createHash('sha256').update(content).digest('hex');
const hmac = (key: Buffer, text: string): Buffer => createHmac('sha256', key).update(text).digest();

async function bodyOf(request: IncomingMessage): Promise<Buffer> {
  const chunks: Buffer[] = [];
  for await (const chunk of request as AsyncIterable<Buffer>) chunks.push(chunk);
  return Buffer.concat(chunks);
}
