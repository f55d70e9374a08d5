/**
 * Everything a bare clone needs before it runs: packages, the command line, the page; for tests also a browser.
 *
 * In    the clone as it stands, with nothing but Node and npm on the machine
 * Out   node_modules as the lock says, dist/cli.mjs, dist/web; a line for each thing done, none for a thing
 *       that stood already
 *
 * It has no dependencies of its own. What was done is remembered by stamps of contents, not of times, so a second
 * run costs a few hundredths of a second.
 *
 *   node setup.mjs            packages, command line, page
 *   node setup.mjs --tests    the same, and what the tests use of the machine
 *   node setup.mjs --no-page  without the page: what the command line itself needs
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('.', import.meta.url));
const at = (...parts) => join(ROOT, ...parts);
const LEAST_NODE = [20, 19];

/** On the error stream, so that the command line's own answers stay alone on the output. */
const say = (line) => process.stderr.write(`${line}\n`);

class SetupFailed extends Error {}

/** Runs a program of the machine; what it printed is shown only when it fails. */
function run(command, args, options = {}) {
  const done = spawnSync(command, args, { cwd: ROOT, encoding: 'utf8', maxBuffer: 64 << 20, ...options });
  const said = `${done.stdout ?? ''}${done.stderr ?? ''}${done.error === undefined ? '' : String(done.error)}`;
  return { ok: done.status === 0, said };
}

function runOrFail(what, command, args, options) {
  const { ok, said } = run(command, args, options);
  if (!ok) throw new SetupFailed(`${what} failed:\n${said}`);
}

function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < LEAST_NODE[0] || (major === LEAST_NODE[0] && minor < LEAST_NODE[1])) {
    throw new SetupFailed(
      `Node ${LEAST_NODE.join('.')} or newer is needed; this is ${process.versions.node}.`,
    );
  }
}

/** Hash of the contents of files and folders, by name. */
function stampOf(paths, also = '') {
  const hash = createHash('sha256').update(also).update(process.versions.node);
  const walk = (path) => {
    let entries;
    try {
      entries = readdirSync(at(path), { withFileTypes: true });
    } catch (reason) {
      if (reason.code === 'ENOTDIR') hash.update(`${path}\0`).update(readFileSync(at(path)));
      else if (reason.code !== 'ENOENT') throw reason;
      return;
    }
    for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) walk(`${path}/${entry.name}`);
  };
  for (const path of paths) walk(path);
  return hash.digest('hex');
}

const stampIn = (path) => {
  try {
    return readFileSync(at(path), 'utf8');
  } catch {
    return '';
  }
};

/** True where node_modules holds what the lock asks for, whoever installed it. */
function installedAsLocked() {
  try {
    const wanted = JSON.parse(readFileSync(at('package-lock.json'), 'utf8')).packages;
    const found = JSON.parse(readFileSync(at('node_modules/.package-lock.json'), 'utf8')).packages;
    return Object.entries(wanted).every(([path, entry]) => {
      if (path === '' || (entry.optional === true && found[path] === undefined)) return true;
      return found[path]?.version === entry.version && found[path]?.integrity === entry.integrity;
    });
  } catch {
    return false;
  }
}

function packages() {
  const stamp = stampOf(['package-lock.json']);
  if (stampIn('node_modules/.flatpatch-stamp') === stamp) return;
  if (!installedAsLocked()) {
    say('Bringing the packages that package-lock.json names (npm ci) …');
    runOrFail('npm ci', 'npm', ['ci', '--no-audit', '--no-fund', '--no-progress'], {
      shell: process.platform === 'win32',
    });
  }
  writeFileSync(at('node_modules/.flatpatch-stamp'), stamp);
}

const CLI_SOURCES = ['src', 'package.json', 'setup.mjs'];
const WEB_SOURCES = ['src', 'package.json', 'vite.config.ts', 'setup.mjs'];

async function commandLine() {
  const stamp = stampOf(CLI_SOURCES, stampIn('node_modules/.flatpatch-stamp'));
  const stands = () => existsSync(at('dist/cli.mjs')) && stampIn('dist/.cli-stamp') === stamp;
  await building(stands, () => buildCommandLine(stamp));
}

async function buildCommandLine(stamp) {
  say('Building the command line (dist/cli.mjs) …');
  const { build } = await import('esbuild');
  const { outputFiles } = await build({
    entryPoints: { cli: at('src/cli/main.ts'), thread: at('src/cli/threads/thread.ts') },
    outdir: at('dist'),
    chunkNames: 'cli-parts/[name]-[hash]',
    outExtension: { '.js': '.mjs' },
    splitting: true,
    bundle: true,
    write: false,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    // dozens of small files of packages, found and read one by one, are half of a short command's time; pdfkit and the
    // CAD kernel find their own data beside themselves, and are only brought in for paper and solids
    external: ['pdfkit', 'replicad', 'replicad-opencascadejs'],
    banner: {
      js: "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);",
    },
    logLevel: 'silent',
  }).catch((reason) => {
    throw new SetupFailed(`The command line does not build:\n${reason.message}`);
  });
  // parts are named by their contents; the entry is put in place last and whole, so that one may run meanwhile
  mkdirSync(at('dist/cli-parts'), { recursive: true });
  const entry = at('dist/cli.mjs');
  const thread = at('dist/thread.mjs');
  for (const { path, contents } of outputFiles) {
    if (path !== entry && path !== thread && existsSync(path)) continue;
    const draft = `${path}.${process.pid}`;
    writeFileSync(draft, contents);
    if (path !== entry) renameSync(draft, path);
  }
  renameSync(`${entry}.${process.pid}`, entry);
  sweep(at('dist/cli-parts'), new Set(outputFiles.map(({ path }) => path)));
  writeFileSync(at('dist/.cli-stamp'), stamp);
}

const LONGEST_BUILD = 5 * 60 * 1000;

/** Builds where what stands is of other sources; of several that ask at once one builds and the others wait for it. */
async function building(stands, build) {
  if (stands()) return;
  const held = at('dist/.building');
  while (!heldByMe(held)) await new Promise((resolve) => setTimeout(resolve, 50));
  try {
    if (!stands()) await build();
  } finally {
    rmSync(held, { force: true });
  }
}

/** Takes the right to build; one that was left behind, by a process that is gone or hangs, is taken over. */
function heldByMe(held) {
  try {
    writeFileSync(held, String(process.pid), { flag: 'wx' });
    return true;
  } catch (reason) {
    if (reason.code !== 'EEXIST') throw reason;
  }
  try {
    const { mtimeMs } = statSync(held);
    const holder = readFileSync(held, 'utf8');
    if (Date.now() - mtimeMs > LONGEST_BUILD || (holder !== '' && !runs(Number(holder))))
      rmSync(held, { force: true });
  } catch (reason) {
    if (reason.code !== 'ENOENT') throw reason;
  }
  return false;
}

function runs(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (reason) {
    return reason.code === 'EPERM';
  }
}

const DAY = 24 * 3600 * 1000;

/** Takes away parts of older builds, but for those of the last day, which may still be running. */
function sweep(folder, kept) {
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (!kept.has(path) && Date.now() - statSync(path).mtimeMs > DAY) rmSync(path, { force: true });
  }
}

async function page() {
  const stamp = stampOf(WEB_SOURCES, stampIn('node_modules/.flatpatch-stamp'));
  const stands = () => existsSync(at('dist/web/index.html')) && stampIn('dist/.web-stamp') === stamp;
  await building(stands, () => buildPage(stamp));
}

function buildPage(stamp) {
  say('Building the page (dist/web) …');
  const draft = at('dist', `.web-${process.pid}`);
  const vite = at('node_modules/vite/bin/vite.js');
  try {
    runOrFail('Building the page', process.execPath, [
      vite,
      'build',
      '--outDir',
      draft,
      '--emptyOutDir',
      '--logLevel',
      'warn',
    ]);
    rmSync(at('dist/web'), { recursive: true, force: true });
    renameSync(draft, at('dist/web'));
  } finally {
    rmSync(draft, { recursive: true, force: true });
  }
  writeFileSync(at('dist/.web-stamp'), stamp);
}

/** What the tests use of the machine: the program looked for, Debian's package of it, and what goes without it. */
const FOR_TESTS = [
  {
    there: () => ['chromium', 'chromium-browser', 'google-chrome'].some(onPath),
    debian: 'chromium',
    without: 'the tests of the page cannot run; install Chromium and put it on the path as "chromium"',
  },
  {
    there: () =>
      run('python3', ['-c', 'import scipy']).ok || run('/usr/bin/python3', ['-c', 'import scipy']).ok,
    debian: 'python3-scipy',
    without: 'comparisons with SciPy use its recorded answers',
  },
  {
    there: () => onPath('ccx'),
    debian: 'calculix-ccx',
    without: 'comparisons with finite elements use their recorded answers',
  },
  { there: () => onPath('g++'), debian: 'g++', without: 'the bench goes without its C++ comparison' },
  {
    there: () => onPath('pdftotext'),
    debian: 'poppler-utils',
    without: 'printed sheets are checked by their own bytes alone',
  },
];

function onPath(name) {
  const ends = process.platform === 'win32' ? ['.exe', '.cmd', ''] : [''];
  const folders = (process.env.PATH ?? '').split(process.platform === 'win32' ? ';' : ':');
  return folders.some((folder) => ends.some((end) => folder !== '' && existsSync(join(folder, name + end))));
}

/** Brings what is missing by the machine's package manager where that may be done; tries once a month at most. */
function machine() {
  const missing = FOR_TESTS.filter((each) => !each.there());
  if (missing.length === 0) return;
  const mayInstall = process.getuid?.() === 0 && onPath('apt-get');
  if (mayInstall && !triedLately(missing)) {
    say(`Bringing for the tests, by apt-get: ${missing.map((each) => each.debian).join(', ')} …`);
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    run('apt-get', ['update', '-qq'], { env });
    for (const each of missing)
      run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', each.debian], { env });
    writeFileSync(
      at('dist/.machine-tried'),
      JSON.stringify({ on: Date.now(), for: missing.map((each) => each.debian) }),
    );
  }
  for (const each of missing.filter((one) => !one.there())) {
    say(
      `Not on this machine: ${each.debian}; ${each.without}.${mayInstall ? '' : ` (apt-get install ${each.debian})`}`,
    );
  }
}

const MONTH = 30 * 24 * 3600 * 1000;

function triedLately(missing) {
  try {
    const tried = JSON.parse(stampIn('dist/.machine-tried'));
    return Date.now() - tried.on < MONTH && missing.every((each) => tried.for.includes(each.debian));
  } catch {
    return false;
  }
}

/**
 * Does what is asked for; answers whether it could be done.
 *
 * @param asked flags as on the command line
 */
export async function setup(asked) {
  try {
    checkNode();
    packages();
    mkdirSync(at('dist'), { recursive: true });
    await commandLine();
    if (!asked.includes('--no-page')) await page();
    if (asked.includes('--tests')) machine();
    return true;
  } catch (reason) {
    if (!(reason instanceof SetupFailed)) throw reason;
    say(reason.message);
    return false;
  }
}

// a clone may be reached by a link, so that the two names differ
if (
  process.argv[1] !== undefined &&
  realpathSync(process.argv[1]) === realpathSync(fileURLToPath(import.meta.url))
) {
  process.exitCode = (await setup(process.argv.slice(2))) ? 0 : 1;
}
