/** One wrong place of a request: a field of a body (JSON Pointer) or a cell of a file (row and column). */
export interface ProblemPlace {
  pointer?: string;
  row?: number;
  column?: string;
  detail: string;
}

/** A problem document of the service (RFC 9457), or the lack of any answer (status 0). */
export class ProblemError extends Error {
  override name = 'ProblemError';
  readonly status: number;
  readonly title: string;
  readonly detail: string;
  readonly slug: string;
  readonly errors: readonly ProblemPlace[];
  /** The whole document, for the extra members that single problems carry. */
  readonly document: Readonly<Record<string, unknown>>;

  constructor(status: number, document: Record<string, unknown>) {
    const title = text(document['title']) ?? 'The service refused';
    const detail = text(document['detail']) ?? title;
    super(detail);
    this.status = status;
    this.title = title;
    this.detail = detail;
    this.slug = text(document['type'])?.split('/').at(-1) ?? '';
    this.errors = places(document['errors']);
    this.document = document;
  }
}

/** The problem of a request that found no service: the device is offline or the service stopped. */
export function noAnswer(): ProblemError {
  return new ProblemError(0, {
    title: 'No answer',
    detail: 'The service does not answer. What you wrote is still here; try again when the connection is back.',
  });
}

/** Reads a problem from the text of a refused answer, whatever a proxy on the way made of it. */
export function problemFrom(status: number, body: string): ProblemError {
  try {
    const document: unknown = JSON.parse(body);
    if (typeof document === 'object' && document !== null) return new ProblemError(status, { ...document });
  } catch {
    // Not JSON: some server in between has answered.
  }
  return new ProblemError(status, {
    title: 'The service refused',
    detail: `The service answered with status ${status}.`,
  });
}

const text = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);

function places(value: unknown): ProblemPlace[] {
  if (!Array.isArray(value)) return [];
  return value.filter((item): item is ProblemPlace => typeof item === 'object' && item !== null && 'detail' in item);
}
