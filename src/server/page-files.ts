/** The page's own files, as built: nothing outside their folder is given out. */
import { readFile } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';
import type { Handler } from 'hono';

const KINDS: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
};

const NOT_BUILT = 'The page is not built here. Run "npm start" in the clone, or "node setup.mjs".';

export const pageFiles =
  (folder: string): Handler =>
  async (context) => {
    const asked = decoded(context.req.path);
    if (asked === undefined) return context.text('Not a path.', 400);
    const path = normalize(join(folder, asked === '/' ? 'index.html' : asked));
    const kind = KINDS[extname(path)];
    // the page keeps car, stop and view in its address: such an address is the page itself
    if (kind === undefined) return sendFile(join(folder, 'index.html'), KINDS['.html']!, false);
    if (!path.startsWith(folder + sep)) return context.text('There is no such file.', 404);
    return sendFile(path, kind, asked.startsWith('/assets/'));
  };

function decoded(path: string): string | undefined {
  try {
    const text = decodeURIComponent(path);
    return text.includes('\0') || text.includes('\\') || text.split('/').includes('..') ? undefined : text;
  } catch {
    return undefined;
  }
}

async function sendFile(path: string, kind: string, named: boolean): Promise<Response> {
  try {
    const body = await readFile(path);
    // names of built assets contain a hash of their contents
    const cache = named ? 'public, max-age=31536000, immutable' : 'no-cache';
    return new Response(new Uint8Array(body), { headers: { 'Content-Type': kind, 'Cache-Control': cache } });
  } catch (reason) {
    const { code } = reason as NodeJS.ErrnoException;
    if (code !== 'ENOENT' && code !== 'EISDIR' && code !== 'ENOTDIR') throw reason;
    const whole = kind.startsWith('text/html');
    return new Response(whole ? NOT_BUILT : 'There is no such file.', { status: whole ? 503 : 404 });
  }
}
