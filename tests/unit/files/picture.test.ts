import { deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { remakePicture, smallPicture } from '../../../api/provenance/files/picture.ts';
import { madeArchive } from '../../support/made-archive.ts';
import { fromPhone, movingWebp, picture, pngThatClaims } from '../../support/made-pictures.ts';

describe('a photograph', () => {
  it('of a phone loses its position, its camera and its words, and stands upright', async () => {
    const sent = await fromPhone();
    const before = await sharp(sent).metadata();
    expect(before).toMatchObject({ orientation: 6, width: 120, height: 80 });
    for (const secret of ['SecretCamera', 'secret valley']) expect(sent.includes(secret)).toBe(true);
    const { bytes, width, height, mediaType } = await remakePicture(sent, 'photograph');
    expect({ width, height, mediaType }).toEqual({ width: 80, height: 120, mediaType: 'image/jpeg' });
    const after = await sharp(bytes).metadata();
    expect([after.exif, after.xmp, after.iptc, after.icc, after.orientation]).toEqual(Array(5).fill(undefined));
    for (const secret of ['SecretCamera', 'secret', 'Exif', 'GPS', 'http', 'adobe'])
      expect(bytes.includes(secret), secret).toBe(false);
  });

  it('keeps the colours that it had, within what a JPEG loses', async () => {
    const { bytes } = await remakePicture(await picture(120, 80).png().toBuffer(), 'photograph');
    const [before, after] = await Promise.all([
      picture(120, 80).raw().toBuffer(),
      sharp(bytes).removeAlpha().raw().toBuffer(),
    ]);
    const apart = before.reduce((sum, value, at) => sum + Math.abs(value - (after[at] ?? 0)), 0) / before.length;
    expect(after.length).toBe(before.length);
    expect(apart).toBeLessThan(6);
  });

  it.each(['jpeg', 'png', 'webp', 'avif'] as const)('is taken as %s and becomes a JPEG', async (format) => {
    const sent = await picture()[format]().toBuffer();
    const { bytes, mediaType } = await remakePicture(sent, 'photograph');
    expect(mediaType).toBe('image/jpeg');
    expect(await sharp(bytes).metadata()).toMatchObject({ format: 'jpeg', width: 120, height: 80, space: 'srgb' });
  });

  it('of four inks, of 16 bits, or see-through, becomes one that every screen shows', async () => {
    const inks = await picture().toColourspace('cmyk').jpeg().toBuffer();
    const deep = await picture().toColourspace('rgb16').png().toBuffer();
    const clear = await picture().ensureAlpha(0.4).png().toBuffer();
    expect((await sharp(inks).metadata()).space).toBe('cmyk');
    expect((await sharp(deep).metadata()).depth).toBe('ushort');
    for (const sent of [inks, deep, clear]) {
      const { bytes } = await remakePicture(sent, 'photograph');
      expect(await sharp(bytes).metadata()).toMatchObject({ space: 'srgb', depth: 'uchar', channels: 3 });
    }
  });

  it('that is very large is made smaller, and a small one is made of it', async () => {
    const sent = await picture(5000, 1000).jpeg().toBuffer();
    const whole = await remakePicture(sent, 'photograph');
    expect([whole.width, whole.height]).toEqual([4096, 819]);
    expect(await sharp(await smallPicture(whole.bytes)).metadata()).toMatchObject({ width: 640, height: 128 });
  });

  it('that is an archive as well is one no more', async () => {
    const archive = madeArchive('Evil.class', 'program');
    const sent = Buffer.concat([await picture().jpeg().toBuffer(), archive]);
    const { bytes } = await remakePicture(sent, 'photograph');
    expect(sent.includes('PK\x05\x06')).toBe(true);
    for (const left of ['PK\x03\x04', 'PK\x05\x06', 'Evil.class', 'program']) expect(bytes.includes(left)).toBe(false);
  });
});

it('a scanned paper keeps its format, without what hung behind it', async () => {
  const scan = Buffer.concat([await picture().png().toBuffer(), Buffer.from('<script>alert(1)</script>')]);
  const { bytes, mediaType } = await remakePicture(scan, 'paper');
  expect(mediaType).toBe('image/png');
  expect(bytes.includes('script')).toBe(false);
  expect((await remakePicture(await picture().webp().toBuffer(), 'paper')).mediaType).toBe('image/webp');
});

describe('a picture is refused that', () => {
  const half = async (bytes: Promise<Buffer>): Promise<Buffer> => {
    const whole = await bytes;
    return whole.subarray(0, whole.length >> 1);
  };
  const refused: [string, () => Promise<Buffer> | Buffer, RegExp][] = [
    ['claims more pixels than any camera has', () => pngThatClaims(60_000, 60_000), /60 million pixels/],
    ['claims a row of all pixels', () => pngThatClaims(2 ** 31 - 1, 1), /pixels|damaged/],
    ['unpacks to far more than it is', () => pngThatClaims(20_000, 20_000, bomb()), /60 million pixels/],
    ['ends too early (JPEG)', () => half(picture(400, 300).jpeg().toBuffer()), /ends too early/],
    ['ends too early (PNG)', () => half(picture(400, 300).png().toBuffer()), /ends too early/],
    ['ends too early (WebP)', () => half(picture(400, 300).webp().toBuffer()), /ends too early/],
    ['ends too early (AVIF)', () => half(picture(400, 300).avif().toBuffer()), /ends too early/],
    ['moves', movingWebp, /several pictures/],
    [
      'is a drawing with a script',
      () => Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>'),
      /damaged/,
    ],
    ['is of a format that is not taken (GIF)', () => picture().gif().toBuffer(), /damaged/],
    ['is of a format that is not taken (TIFF)', () => picture().tiff().toBuffer(), /damaged/],
    ['is nothing', () => Buffer.alloc(0), /empty/],
    ['is noise behind the right beginning', () => Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), bomb()]), /damaged/],
  ];

  it.each(refused)('%s', async (_, make, told) => {
    await expect(remakePicture(await make(), 'photograph')).rejects.toThrow(told);
  });
});

const bomb = (): Buffer => deflateSync(Buffer.alloc(50_000_000));
