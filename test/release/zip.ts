import { readFileSync } from 'node:fs';
import { inflateRawSync } from 'node:zlib';

/**
 * The files of a ZIP archive by their paths, as far as the packer writes such archives: plain or deflated, below 4 GB.
 * Offsets of the records: PKWARE, APPNOTE.TXT, sections 4.3.7, 4.3.12 and 4.3.16.
 */
export function filesOfZip(path: string): Map<string, Buffer> {
  const bytes = readFileSync(path);
  const end = bytes.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1'));
  const files = new Map<string, Buffer>();
  let at = bytes.readUInt32LE(end + 16);
  for (let left = bytes.readUInt16LE(end + 10); left > 0; left--) {
    const [method, size] = [bytes.readUInt16LE(at + 10), bytes.readUInt32LE(at + 20)];
    const [name, extra, comment] = [28, 30, 32].map((offset) => bytes.readUInt16LE(at + offset)) as [
      number,
      number,
      number,
    ];
    const local = bytes.readUInt32LE(at + 42);
    const start = local + 30 + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
    const held = bytes.subarray(start, start + size);
    files.set(
      bytes.toString('utf8', at + 46, at + 46 + name),
      method === 0 ? Buffer.from(held) : inflateRawSync(held),
    );
    at += 46 + name + extra + comment;
  }
  return files;
}
