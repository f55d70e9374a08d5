/**
 * Keeps other people's pages out.
 *
 * The server listens on this machine alone, yet any page open in the same browser can send requests to it. So:
 * a request must call the server by a loopback name (a page that has its own name point here is refused), and
 * whatever changes a file must come from the server's own page or from no page at all.
 *
 * [RFC 6454] the origin of a request; [Fetch] Sec-Fetch-Site. Nothing is ever granted to another origin.
 */
import type { MiddlewareHandler } from 'hono';

const LOOPBACK = ['localhost', '127.0.0.1', '[::1]'];

/** The Host header names this machine, and the port that it came in by where there is one. */
export const isOwnHost = (host: string | undefined, port: number): boolean =>
  LOOPBACK.some((name) => host === `${name}:${port}` || (port === 80 && host === name));

const isOwnOrigin = (origin: string, port: number): boolean =>
  origin.startsWith('http://') && isOwnHost(origin.slice('http://'.length), port);

const READING = ['GET', 'HEAD'];

export const guard =
  (port: () => number): MiddlewareHandler =>
  async (context, next) => {
    const { method } = context.req;
    if (!isOwnHost(context.req.header('host'), port())) {
      return refused(
        context.req.path,
        'guard/host',
        'This server answers to its own address on this machine alone.',
      );
    }
    const origin = context.req.header('origin');
    const site = context.req.header('sec-fetch-site');
    const foreign =
      (origin !== undefined && !isOwnOrigin(origin, port())) ||
      (site !== undefined && !['same-origin', 'none'].includes(site));
    // a link from elsewhere may open the page, but nothing of a car is handed to another page
    const opensPage = READING.includes(method) && !context.req.path.startsWith('/api/');
    if (foreign && !opensPage) {
      return refused(context.req.path, 'guard/origin', 'Another page may not read or change the workshop.');
    }
    if (
      !READING.includes(method) &&
      !(context.req.header('content-type') ?? '').startsWith('application/json')
    ) {
      return refused(context.req.path, 'guard/type', 'What is sent here must be JSON and say so.', 415);
    }
    return next();
  };

const refused = (path: string, code: string, message: string, status = 403): Response =>
  Response.json({ problems: [{ code, message, path, weight: 'error' }] }, { status });

/** What the page may load: its own files alone. Styles may be set by the drawing code. */
const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self' blob:",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "connect-src 'self'",
  "frame-ancestors 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

export const headers: MiddlewareHandler = async (context, next) => {
  await next();
  const set = context.res.headers;
  set.set('Content-Security-Policy', CONTENT_POLICY);
  set.set('X-Content-Type-Options', 'nosniff');
  set.set('X-Frame-Options', 'DENY');
  set.set('Referrer-Policy', 'no-referrer');
  set.set('Cross-Origin-Opener-Policy', 'same-origin');
  set.set('Cross-Origin-Resource-Policy', 'same-origin');
  if (context.req.path.startsWith('/api/')) set.set('Cache-Control', 'no-store');
};
