import { crc32 } from 'node:zlib';

/** A ZIP archive of one file, stored as it is, that believes to begin `offset` bytes into the file. */
export function madeArchive(name: string, content: string, offset = 0): Buffer {
  const data = Buffer.from(content);
  const sum = crc32(data);
  const fields = (start: number, size: number): Buffer => {
    const part = Buffer.alloc(size);
    part.writeUInt32LE(start, 0);
    return part;
  };
  const local = fields(0x04034b50, 30);
  local.writeUInt16LE(20, 4);
  local.writeUInt32LE(sum, 14);
  local.writeUInt32LE(data.length, 18);
  local.writeUInt32LE(data.length, 22);
  local.writeUInt16LE(name.length, 26);
  const central = fields(0x02014b50, 46);
  central.writeUInt16LE(20, 4);
  central.writeUInt16LE(20, 6);
  central.writeUInt32LE(sum, 16);
  central.writeUInt32LE(data.length, 20);
  central.writeUInt32LE(data.length, 24);
  central.writeUInt16LE(name.length, 28);
  central.writeUInt32LE(offset, 42);
  const end = fields(0x06054b50, 22);
  end.writeUInt16LE(1, 8);
  end.writeUInt16LE(1, 10);
  end.writeUInt32LE(46 + name.length, 12);
  end.writeUInt32LE(offset + 30 + name.length + data.length, 16);
  const label = Buffer.from(name);
  return Buffer.concat([local, label, data, central, label, end]);
}
