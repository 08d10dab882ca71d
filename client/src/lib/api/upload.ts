import { api, newKey } from './client.ts';
import { noAnswer, problemFrom, ProblemError } from './problem.ts';

interface UploadOptions {
  /** Share of the body that has left this device, 0 to 1. */
  onprogress?: (share: number) => void;
  signal?: AbortSignal;
}

/**
 * Sends a register sheet; where the session has ended meanwhile, once more after signing in again. Throws `ProblemError`.
 */
export async function sendSheet<T>(path: string, sheet: Blob, options: UploadOptions = {}): Promise<T> {
  try {
    return await sendOnce<T>(path, sheet, options);
  } catch (error) {
    if (error instanceof ProblemError && error.status === 401 && (await api.signInAgain?.()))
      return sendOnce<T>(path, sheet, options);
    throw error;
  }
}

/** XMLHttpRequest, since fetch cannot tell how much of a body has been sent. */
function sendOnce<T>(path: string, sheet: Blob, options: UploadOptions): Promise<T> {
  return new Promise<T>((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', `/api/v1${path}`);
    request.setRequestHeader('Content-Type', 'text/csv; charset=utf-8');
    request.setRequestHeader('Accept', 'application/json');
    request.setRequestHeader('Idempotency-Key', newKey());
    request.upload.onprogress = (event) => {
      if (event.lengthComputable) options.onprogress?.(event.loaded / event.total);
    };
    request.onload = () => {
      try {
        if (request.status >= 300) throw problemFrom(request.status, request.responseText);
        resolve(JSON.parse(request.responseText) as T);
      } catch (error) {
        reject(error instanceof ProblemError ? error : problemFrom(request.status, request.responseText));
      }
    };
    request.onerror = () => reject(noAnswer());
    request.onabort = () => reject(new DOMException('The upload was stopped.', 'AbortError'));
    options.signal?.addEventListener('abort', () => request.abort());
    request.send(sheet);
  });
}
