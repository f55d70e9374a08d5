/**
 * Runs commands one after another in one process: what the tests of answers ask, without a new process for each.
 *
 * In    messages: what was typed, standard input, the folder it is typed in, the environment
 * Out   what came on output and error stream, and the exit code that a process of its own would have ended with
 *
 * It runs what bin/flatpatch.mjs runs. Exit codes, streams and signals of a real process are tested with processes
 * (`flatpatchAlone` in flatpatch.ts).
 */
import { Readable } from 'node:stream';
import { setup } from '../../setup.mjs';

if (!(await setup(['--no-page']))) process.exit(1);
const { main } = await import('../../dist/cli.mjs');

// every run listens to its streams anew
process.stdout.setMaxListeners(0);
process.stderr.setMaxListeners(0);
process.setMaxListeners(0);

/** Takes what is written to a stream; gives back what came and the stream as it was. */
function taken(stream) {
  const { write } = stream;
  const parts = [];
  stream.write = (part, encoding, done) => {
    parts.push(Buffer.from(part, typeof encoding === 'string' ? encoding : undefined));
    (typeof encoding === 'function' ? encoding : done)?.();
    return true;
  };
  return () => {
    stream.write = write;
    return Buffer.concat(parts).toString('utf8');
  };
}

async function run({ args, input, folder, environment }) {
  process.chdir(folder);
  Object.assign(process.env, environment);
  Object.defineProperty(process, 'stdin', { value: Readable.from([Buffer.from(input)]), configurable: true });
  process.exitCode = 0;
  const [out, err] = [taken(process.stdout), taken(process.stderr)];
  await main(args);
  const code = process.exitCode;
  process.exitCode = 0;
  return { code, out: out(), err: err() };
}

process.on('message', async (asked) => process.send(await run(asked)));
process.send('ready');
