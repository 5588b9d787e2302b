import { createConnection, type Socket } from 'node:net';

const END_OF_HEAD = Buffer.from('\r\n\r\n');
const END_OF_CHUNKS = Buffer.from('\r\n0\r\n\r\n');

/** Whether these bytes are a whole answer of HTTP/1.1, by its length or its last chunk. */
const isWhole = (bytes: Buffer): boolean => {
  const head = bytes.indexOf(END_OF_HEAD);
  if (head < 0) return false;
  const length = /\r\ncontent-length: (\d+)/i.exec(bytes.toString('latin1', 0, head + 2))?.[1];
  if (length !== undefined) return bytes.length >= head + END_OF_HEAD.length + Number(length);
  return bytes.subarray(-END_OF_CHUNKS.length).equals(END_OF_CHUNKS);
};

/** What an answer is, and how long it took. */
export interface Answered {
  status: number;
  /** Of the body as it was sent, with the few bytes between its chunks. */
  bytes: number;
  ms: number;
}

/** One line to a server, asked one thing after another: bare sockets, so that asking takes less than answering. */
export const lineTo = async (
  port: number,
): Promise<{ ask(path: string, encoding: string): Promise<Answered>; close(): void }> => {
  const socket: Socket = createConnection({ port, host: '127.0.0.1', noDelay: true });
  await new Promise((resolve, reject) => socket.once('connect', resolve).once('error', reject));
  let parts: Buffer[] = [];
  let got: ((bytes: Buffer) => void) | null = null;
  let fail: ((error: Error) => void) | null = null;
  socket.on('data', (part) => {
    parts.push(part);
    const bytes = parts.length === 1 ? part : Buffer.concat(parts);
    parts = [bytes];
    if (isWhole(bytes)) got?.(bytes);
  });
  socket.on('error', (error) => fail?.(error));
  socket.on('close', () => fail?.(new Error('the server closed the line')));
  const ask = async (path: string, encoding: string): Promise<Answered> => {
    parts = [];
    const began = performance.now();
    const bytes = await new Promise<Buffer>((resolve, reject) => {
      [got, fail] = [resolve, reject];
      socket.write(`GET ${path} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nAccept-Encoding: ${encoding}\r\n\r\n`);
    });
    const ms = performance.now() - began;
    const status = Number(bytes.toString('latin1', 9, 12));
    return { status, ms, bytes: bytes.length - bytes.indexOf(END_OF_HEAD) - END_OF_HEAD.length };
  };
  return { ask, close: () => socket.destroy() };
};

/** What came of asking for a while from so many places at once. */
export interface Load {
  perSecond: number;
  p50: number;
  p99: number;
}

const AT_ONCE = 20;

/** Asks for a page at 20 at once, each again as soon as it was answered, until so long has gone by. */
export const load = async (port: number, path: string, forMs: number): Promise<Load> => {
  const lines = await Promise.all(Array.from({ length: AT_ONCE }, () => lineTo(port)));
  const took: number[] = [];
  const began = performance.now();
  const until = began + forMs;
  await Promise.all(
    lines.map(async (line) => {
      do took.push((await line.ask(path, 'gzip')).ms);
      while (performance.now() < until);
    }),
  );
  const seconds = (performance.now() - began) / 1000;
  for (const line of lines) line.close();
  took.sort((a, b) => a - b);
  const at = (share: number): number => took[Math.min(took.length - 1, Math.floor(took.length * share))]!;
  return { perSecond: took.length / seconds, p50: at(0.5), p99: at(0.99) };
};
