import { crc32, deflateSync } from 'node:zlib';
import sharp, { type Sharp } from 'sharp';

/** An invented animal's back: spots on a ground, so that two pictures of different seeds differ. */
export function spots(width: number, height: number, seed = 1): Buffer {
  const pixels = Buffer.alloc(width * height * 3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const isSpot = Math.sin(x / 9 + seed) * Math.cos(y / 7 - seed) > 0.4;
      const at = 3 * (y * width + x);
      pixels.set(isSpot ? [240, 190, 40] : [30, 60, 90], at);
    }
  return pixels;
}

/** A picture of spots, to be written in any format. */
export function picture(width = 120, height = 80, seed = 1): Sharp {
  return sharp(spots(width, height, seed), { raw: { width, height, channels: 3 } });
}

/** Where the photograph with a position says that it was taken: in the file as degrees, minutes and seconds. */
export const position = { latitude: '1/1 23/1 45/1', longitude: '80/1 12/1 34/1' };

/** A JPEG as a phone makes it: turned by a quarter, with a position, a camera and words. */
export function fromPhone(): Promise<Buffer> {
  return picture(120, 80)
    .withExif({
      IFD0: { Make: 'SecretCamera', ImageDescription: 'the secret valley', Orientation: '6' },
      IFD3: {
        GPSLatitudeRef: 'S',
        GPSLatitude: position.latitude,
        GPSLongitudeRef: 'W',
        GPSLongitude: position.longitude,
      },
    })
    .withXmp(
      '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" dc:source="the secret valley"/></rdf:RDF></x:xmpmeta>',
    )
    .withMetadata({ orientation: 6 })
    .jpeg()
    .toBuffer();
}

/** A PNG that says it is this large, whatever follows. */
export function pngThatClaims(width: number, height: number, data: Buffer = deflateSync(Buffer.alloc(1000))): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('IDAT', data),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type), data]);
  const ends = Buffer.alloc(8);
  ends.writeUInt32BE(data.length, 0);
  ends.writeUInt32BE(crc32(body), 4);
  return Buffer.concat([ends.subarray(0, 4), body, ends.subarray(4)]);
}

/** A WebP that moves. */
export async function movingWebp(): Promise<Buffer> {
  const frames = await Promise.all([1, 2].map((seed) => picture(40, 30, seed).png().toBuffer()));
  return sharp(frames, { join: { animated: true } })
    .webp()
    .toBuffer();
}
