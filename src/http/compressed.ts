import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import type { Context, MiddlewareHandler } from 'hono';

type Coding = 'br' | 'gzip';
type Bytes = Uint8Array<ArrayBuffer>;

/** A body that is answered with again and again: each coding of it is made once. */
export interface KeptBody {
  bytes: Bytes;
  coded: Map<Coding, Promise<Bytes>>;
  /** It is answered with for long, so that the smallest is worth the while. */
  isLasting?: boolean;
}

/** Smaller bodies fit one packet either way. */
const SMALLEST_BYTES = 1024;
const QUICK_QUALITY = 4;
const TEXT = /^(text\/(?!event-stream)|application\/(json|manifest\+json|problem\+json|openapi\+json)|image\/svg\+xml)/;

const [gzipped, brotli] = [promisify(gzip), promisify(brotliCompress)];

const CODERS: Readonly<Record<Coding, (bytes: Bytes, isLasting: boolean) => Promise<Uint8Array>>> = {
  gzip: (bytes) => gzipped(bytes),
  br: (bytes, isLasting) => {
    const quality = isLasting ? constants.BROTLI_MAX_QUALITY : QUICK_QUALITY;
    const size = { [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length };
    return brotli(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: quality, ...size } });
  },
};

const coded = (body: KeptBody, coding: Coding): Promise<Bytes> => {
  const before = body.coded.get(coding);
  if (before) return before;
  const made = CODERS[coding](body.bytes, body.isLasting ?? false).then((bytes) => new Uint8Array(bytes));
  body.coded.set(coding, made);
  return made;
};

/** The smallest coding that is taken (RFC 9110, 12.5.3); null where none of ours is. "br;q=0" takes it not. */
const codingFor = (accepted: string | undefined): Coding | null => {
  const named = (accepted ?? '').split(',').map((one) => one.trim().toLowerCase());
  const takes = (coding: Coding) => named.some((one) => one.split(';')[0] === coding && !/;\s*q=0(\.0*)?$/.test(one));
  return takes('br') ? 'br' : takes('gzip') ? 'gzip' : null;
};

const KEPT = 'body that is kept';

/** Has an answer sent with what is kept of it, coded at most once. */
export const answerWithKept = (c: Context, body: KeptBody): void => c.set(KEPT, body);

/** What is kept is no longer what is answered. */
export const answerAsItIs = (c: Context): void => c.set(KEPT, undefined);

const isCodable = ({ headers, body }: Response): boolean =>
  body !== null && !headers.has('Content-Encoding') && TEXT.test(headers.get('Content-Type') ?? '');

/** Sends texts in the smallest coding that is taken: brotli (RFC 7932), else gzip. Streams go as they are. */
export const compressed = (): MiddlewareHandler => async (c, next) => {
  await next();
  if (c.req.method === 'HEAD' || !isCodable(c.res)) return;
  c.res.headers.append('Vary', 'Accept-Encoding');
  const coding = codingFor(c.req.header('Accept-Encoding'));
  if (!coding) return;
  const kept = c.get(KEPT) as KeptBody | undefined;
  const body = kept ?? { bytes: new Uint8Array(await c.res.clone().arrayBuffer()), coded: new Map() };
  if (body.bytes.length < SMALLEST_BYTES) return;
  const bytes = await coded(body, coding);
  const { status } = c.res;
  const headers = new Headers(c.res.headers);
  headers.set('Content-Encoding', coding);
  headers.delete('Content-Length');
  // Else Hono puts the headers of the one before into the new one.
  c.res = undefined;
  c.res = new Response(bytes, { status, headers });
};
