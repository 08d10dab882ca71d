import type { Request } from 'express';

/** A file as it was sent, not looked at yet. */
export interface ReceivedFile {
  readonly bytes: Buffer;
  /** Where it stood in the request, as a JSON pointer: empty where it was the whole body. */
  readonly pointer: string;
}

/** A request with a file. */
export interface FileRequest extends Request {
  receivedFile?: ReceivedFile;
}

/** The file of a request that went through its middleware. */
export function receivedFile(request: FileRequest): ReceivedFile {
  if (!request.receivedFile) throw new Error('no file was received: the middleware of this route is missing');
  return request.receivedFile;
}
