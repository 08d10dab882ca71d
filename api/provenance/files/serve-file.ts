import type { Readable } from 'node:stream';
import { StreamableFile } from '@nestjs/common';
import type { Request, Response } from 'express';
import type { StoredFile } from './stored-file.entity.ts';

/** A file as it goes out. */
export interface ServedFile {
  readonly mediaType: StoredFile['mediaType'];
  /** Name of it without an ending, made by us: letters, digits and hyphens. */
  readonly name: string;
  /** Tells one content from any other. */
  readonly tag: string;
  /** Whether the content at this address can never be another one. */
  readonly isLasting: boolean;
  readonly open: () => Promise<Readable | Uint8Array>;
}

const endings: Readonly<Record<StoredFile['mediaType'], string>> = {
  'application/pdf': 'pdf',
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
};

/** Whatever a browser takes the file for: nothing in it runs, and no page shows it as a part of itself. */
const policy = "sandbox; default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/**
 * Answers with a file: its own type and no other, a document as a download, a picture to be looked at. Whoever has this very content already is
 * told so with 304. A copy is kept by the browser of whoever asked, and by nothing between.
 */
export async function serveFile(
  request: Request,
  response: Response,
  file: ServedFile,
): Promise<StreamableFile | undefined> {
  const tag = `"${file.tag}"`;
  const way = file.mediaType === 'application/pdf' ? 'attachment' : 'inline';
  response.set({
    'Content-Security-Policy': policy,
    'X-Content-Type-Options': 'nosniff',
    'Cache-Control': file.isLasting ? 'private, max-age=86400, immutable' : 'private, no-cache',
    Vary: 'Cookie, Authorization',
    ETag: tag,
  });
  if (isHeld(request.headers['if-none-match'], tag)) {
    response.status(304);
    return undefined;
  }
  const disposition = `${way}; filename="${file.name.replace(/[^\w-]+/g, '-').replace(/-+$/, '')}.${endings[file.mediaType]}"`;
  const options = { type: file.mediaType, disposition };
  const content = await file.open();
  return content instanceof Uint8Array
    ? new StreamableFile(content, { ...options, length: content.length })
    : new StreamableFile(content, options);
}

function isHeld(header: string | undefined, tag: string): boolean {
  const tags = (header ?? '').split(',').map((one) => one.trim().replace(/^W\//, ''));
  return tags.includes(tag) || tags.includes('*');
}
