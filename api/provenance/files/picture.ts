import sharp, { type Metadata, type Sharp } from 'sharp';
import { FileFault } from './file-fault.ts';
import { say } from '../../platform/say.ts';

/** Most pixels that a picture may have; what claims more is not decoded. */
const mostPixels = 60_000_000;

/** The longest edge of a picture that is kept; longer ones are made smaller. */
const longestEdge = 4096;

/** The longest edge of a small picture, for lists and for laying beside each other. */
const smallEdge = 640;

/** Seconds after which the work on one picture is given up. */
const mostSeconds = 20;

/** A picture made anew from its pixels. */
export interface MadePicture {
  readonly bytes: Buffer;
  readonly mediaType: 'image/jpeg' | 'image/png' | 'image/webp';
  readonly width: number;
  readonly height: number;
}

// The library knows dozens of formats, some of which run scripts or read other files; here it has those that are taken, and no others.
sharp.block({ operation: ['VipsForeignLoad'] });
sharp.unblock({
  operation: ['VipsForeignLoadJpeg', 'VipsForeignLoadPng', 'VipsForeignLoadWebp', 'VipsForeignLoadHeif'],
});
// every picture is another one
sharp.cache(false);

/**
 * Decodes a picture and makes it anew from its pixels, upright, in sRGB and 8 bits, so that nothing of the file stays but what is seen: no
 * position, no camera, no words, nothing that hangs behind it. A photograph becomes a JPEG; a scanned paper keeps its format.
 * It runs in threads of the library. @throws FileFault
 */
export async function remakePicture(bytes: Uint8Array, use: 'photograph' | 'paper'): Promise<MadePicture> {
  const { format } = await metadataOf(bytes);
  const upright = opened(bytes)
    .autoOrient()
    .resize({ width: longestEdge, height: longestEdge, fit: 'inside', withoutEnlargement: true })
    .toColourspace('srgb');
  const output = use === 'photograph' || format === 'heif' ? 'jpeg' : format;
  const { data, info } = await made(inFormat(upright, output));
  const mediaType = `image/${output}` as MadePicture['mediaType'];
  return { bytes: data, mediaType, width: info.width, height: info.height };
}

/** A small JPEG of a picture that is kept here. */
export async function smallPicture(bytes: Uint8Array): Promise<Buffer> {
  const small = opened(bytes).resize({ width: smallEdge, height: smallEdge, fit: 'inside', withoutEnlargement: true });
  return (await made(inFormat(small, 'jpeg'))).data;
}

function opened(bytes: Uint8Array): Sharp {
  return sharp(bytes, { limitInputPixels: mostPixels, failOn: 'error' }).timeout({ seconds: mostSeconds });
}

function inFormat(picture: Sharp, format: string): Sharp {
  if (format === 'png') return picture.png();
  if (format === 'webp') return picture.webp({ quality: 90 });
  return picture.flatten({ background: 'white' }).jpeg({ quality: 88, chromaSubsampling: '4:4:4' });
}

async function metadataOf(bytes: Uint8Array): Promise<Metadata> {
  if (bytes.length === 0) throw new FileFault(say`This picture is empty. Choose it again.`);
  const metadata = await opened(bytes).metadata().catch(tell);
  if ((metadata.pages ?? 1) > 1)
    throw new FileFault(
      say`This file holds several pictures, or one that moves. Save the one that matters as a picture of its own.`,
    );
  return metadata;
}

async function made(picture: Sharp): Promise<{ data: Buffer; info: { width: number; height: number } }> {
  return picture.toBuffer({ resolveWithObject: true }).catch(tell);
}

/** What the library found, in words of ours: its own speak of its insides. */
function tell(error: unknown): never {
  const words = error instanceof Error ? error.message : '';
  if (/pixel limit/i.test(words))
    throw new FileFault(
      say`This picture has more than ${mostPixels / 1_000_000} million pixels. Save it smaller, then send that.`,
    );
  if (/timeout/i.test(words))
    throw new FileFault(say`This picture takes longer than ${mostSeconds} seconds to read. Save it as a plain JPEG.`);
  throw new FileFault(say`This picture is damaged or ends too early. Open it, save it again as JPEG, and send that.`);
}
