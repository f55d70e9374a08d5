/** `flatpatch serve`: the workshop in the browser, on this machine alone. */
import type { Command } from 'commander';
import { type DemoDone, putDemo } from '../../workshop/demo.ts';
import { workshopHome } from '../../workshop/home.ts';
import { askedCount } from '../asked.ts';
import { command, complain, sayLines } from '../command.ts';
import { badAsk } from '../outcome.ts';

const USUAL_PORT = 4178;
/** How many ports above the usual one are tried where nobody asked for a certain one. */
const OTHER_PORTS = 20;

export function serveCommand(): Command {
  const made = command('serve', 'Open the workshop for the browser, on this machine alone; Ctrl-C ends it', [
    'flatpatch serve',
    'PORT=4200 FLATPATCH_HOME=./workshop flatpatch serve',
  ]);
  return made
    .option('--port <number>', 'port; left out, PORT or the first free one from 4178')
    .action(async (options: { readonly port?: string }) => {
      const port = askedPort(options.port);
      const home = workshopHome();
      sayDemo(await putDemo(home), home);
      await serve(home, port);
    });
}

export function sayDemo(done: DemoDone, home: string): void {
  if (done.filled) complain(`The workshop was empty; the invented cars are in ${home} now.`);
  else if (done.cars.length > 0)
    complain(`Invented cars brought up to this version: ${done.cars.join(', ')}.`);
}

/** The port that is asked for, before anything is done; undefined where none is. @throws BadInput */
export function askedPort(option?: string): number | undefined {
  const port = option ?? process.env.PORT;
  if (port === undefined || port === '') return undefined;
  return askedCount(option === undefined ? 'PORT' : '--port', port, 0, 65535);
}

/** Serves until it is told to stop; the address is the last line that is said. */
export async function serve(home: string, asked: number | undefined): Promise<void> {
  const { PortTaken, startServer } = await import('../../server/index.ts');
  try {
    const running = await startServer({
      home,
      port: asked ?? USUAL_PORT,
      orNext: asked === undefined ? OTHER_PORTS : 0,
    });
    sayLines([running.url]);
    await toldToStop();
    await running.close();
  } catch (reason) {
    if (!(reason instanceof PortTaken)) throw reason;
    throw badAsk('serve/port-taken', reason.message, 'Choose another with PORT, or end what uses it.');
  }
}

const toldToStop = (): Promise<void> =>
  new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => resolve());
  });
