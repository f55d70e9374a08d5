/**
 * The local server: on this machine's loopback address alone.
 *
 * In    the workshop's folder and a port
 * Out   the address, and how to stop
 */
import { createServer } from 'node:http';
import { join } from 'node:path';
import { getRequestListener } from '@hono/node-server';
import { carIds } from '../workshop/folder.ts';
import { WEB_FOLDER } from '../workshop/home.ts';
import { clearParts } from '../workshop/save.ts';
import { watchWorkshop } from '../workshop/watch.ts';
import { makeApp } from './app.ts';
import { Listeners } from './events.ts';

export interface ServerOptions {
  readonly home: string;
  /** 0: any free one. */
  readonly port: number;
  /** How many ports above `port` may be taken instead where it is in use. */
  readonly orNext?: number;
  /** The built page; left out, the one that came with the program. */
  readonly web?: string;
}

export interface Running {
  readonly url: string;
  readonly port: number;
  readonly close: () => Promise<void>;
}

const ADDRESS = '127.0.0.1';

/** Nobody listens to a port in use: told with the port, so that another can be chosen. */
export class PortTaken extends Error {
  readonly port: number;

  constructor(port: number) {
    super(`Port ${port} is in use by another program.`);
    this.port = port;
  }
}

/** @throws PortTaken where the port and those above it that may be taken are in use */
export async function startServer({
  home,
  port,
  orNext = 0,
  web = WEB_FOLDER,
}: ServerOptions): Promise<Running> {
  for (const id of await carIds(home)) await clearParts(join(home, id));
  const listeners = new Listeners();
  let taken = port;
  const app = makeApp({ home, web, listeners, port: () => taken });
  const server = createServer(getRequestListener(app.fetch));
  // a request that trickles in must not hold a connection for ever
  server.requestTimeout = 30_000;
  server.headersTimeout = 10_000;
  taken = await listen(server, port, orNext);
  const watching = await watchWorkshop(home, (change) => listeners.tell(change));
  return {
    url: `http://${ADDRESS}:${taken}/`,
    port: taken,
    close: async () => {
      watching.close();
      listeners.close();
      await new Promise<void>((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      });
    },
  };
}

async function listen(server: ReturnType<typeof createServer>, first: number, more: number): Promise<number> {
  for (let port = first; ; port += 1) {
    try {
      return await listenAt(server, port);
    } catch (reason) {
      if ((reason as NodeJS.ErrnoException).code !== 'EADDRINUSE') throw reason;
      if (port >= first + more) throw new PortTaken(first);
    }
  }
}

const listenAt = (server: ReturnType<typeof createServer>, port: number): Promise<number> =>
  new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, ADDRESS, () => {
      server.removeListener('error', reject);
      const address = server.address();
      resolve(typeof address === 'object' && address !== null ? address.port : port);
    });
  });
