/**
 * The routes: the workshop's cars, their texts, changes to them, sheets, and the page itself.
 *
 * In    requests of the page on this machine
 * Out   JSON; what is wrong is always `{ problems: [...] }` in the one form
 * Not   any figure of a car: the page works those out itself with the same questions
 */
import { join } from 'node:path';
import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { lately } from '../car/lately.ts';
import { namedFiles } from '../car/named-files.ts';
import { type CarSource, readCar } from '../car/read.ts';
import { sameSource } from '../car/same-source.ts';
import { carFileSchema } from '../car/schema.ts';
import type { Problem } from '../measured/problem.ts';
import {
  addCar,
  CAR_FILE,
  carIds,
  carText,
  FolderError,
  isCarId,
  LONGEST_TEXT,
  noSuchCar,
  readScan,
  sourceOf,
  workshopNotes,
} from '../workshop/folder.ts';
import { remember, saveChanges } from '../workshop/save.ts';
import { askedCar, askedChanges, askedSheet } from './asked.ts';
import type { Listeners } from './events.ts';
import { guard, headers } from './guard.ts';
import { pageFiles } from './page-files.ts';
import { askedPrimaries, primariesSheetResponse } from './primaries-sheet.ts';
import { askedRatioSheet, ratioSheetResponse } from './ratio-sheet.ts';
import { sheetResponse } from './sheet.ts';

export interface Serving {
  /** The workshop's folder. */
  readonly home: string;
  /** The page as built. */
  readonly web: string;
  readonly listeners: Listeners;
  readonly port: () => number;
}

const STATUS: Readonly<Record<string, 400 | 404 | 409>> = {
  'workshop/no-car': 404,
  'file/not-there': 404,
  'workshop/id-taken': 409,
};

export function makeApp({ home, web, listeners, port }: Serving): Hono {
  const app = new Hono();
  app.use(headers);
  app.use(guard(port));
  const limit = bodyLimit({
    maxSize: LONGEST_TEXT + 100_000,
    onError: (context) =>
      context.json(problems('asked/too-long', 'What was sent is longer than any car file.'), 413),
  });
  app.use('/api/*', limit);

  app.get('/api/workshop', async (context) => {
    const [notes, ids] = await Promise.all([workshopNotes(home), carIds(home)]);
    return context.json({ ...notes, cars: await Promise.all(ids.map((id) => carOnFloor(home, id))) });
  });
  app.get('/api/schema', (context) => context.json(carFileSchema()));
  app.get('/api/events', listeners.handler);
  app.get('/api/cars/:id', async (context) => {
    const id = context.req.param('id');
    const { text, version, files, logs, problems: unread } = await carText(home, id);
    remember(text, version);
    return context.json({ id, text, files, logs, version, problems: unread });
  });
  app.get('/api/cars/:id/scans/:file', async (context) => {
    const id = context.req.param('id');
    const file = context.req.param('file');
    const { text } = await carText(home, id);
    // of all that lies in the folder, only what the car file calls a scan
    if (!namedFiles(text).scans.includes(file)) {
      return context.json(problems('scan/unknown', `The car file names no scan "${file}".`), 404);
    }
    const bytes = await readScan(join(home, id), file);
    return context.body(new Uint8Array(bytes), 200, { 'content-type': 'application/octet-stream' });
  });
  app.post('/api/cars', async (context) => {
    const asked = askedCar(await bodyOf(context.req));
    if (!asked.ok) return context.json({ problems: [asked.problem] }, 422);
    const { text, version } = await addCar(home, asked.is.id, asked.is.text);
    return context.json({ id: asked.is.id, text, version }, 201);
  });
  app.post('/api/cars/:id/changes', async (context) => {
    const asked = askedChanges(await bodyOf(context.req));
    if (!asked.ok) return context.json({ problems: [asked.problem] }, 422);
    const id = context.req.param('id');
    if (!isCarId(id)) throw noSuchCar();
    const saved = await saveChanges({ folder: join(home, id), name: CAR_FILE, ...asked.is });
    if (saved.kind === 'refused') return context.json({ problems: saved.problems }, 422);
    const { kind, ...rest } = saved;
    return context.json(rest, kind === 'saved' ? 200 : 409);
  });
  app.get('/api/cars/:id/sheets/:sheet', async (context) => {
    const asked = askedSheet(context.req.param('sheet'), context.req.query());
    if (!asked.ok) return context.json({ problems: [asked.problem] }, 422);
    return sheetResponse(home, context.req.param('id'), asked.is);
  });
  app.post('/api/cars/:id/primaries-sheet', async (context) => {
    const asked = askedPrimaries(await bodyOf(context.req));
    if (!asked.ok) return context.json({ problems: [asked.problem] }, 422);
    return primariesSheetResponse(home, context.req.param('id'), asked.is);
  });
  app.post('/api/cars/:id/ratio-sheet', async (context) => {
    const asked = askedRatioSheet(await bodyOf(context.req));
    if (!asked.ok) return context.json({ problems: [asked.problem] }, 422);
    return ratioSheetResponse(home, context.req.param('id'), asked.is);
  });
  app.all('/api/*', (context) =>
    context.json(problems('asked/no-route', 'There is nothing at this address.'), 404),
  );
  app.get('*', pageFiles(web));

  app.onError((reason, context) => {
    if (reason instanceof FolderError) {
      return context.json({ problems: [reason.problem] }, STATUS[reason.problem.code] ?? 400);
    }
    // our own mistake: told on the terminal in full, to the page in a sentence
    process.stderr.write(`${reason.stack ?? reason.message}\n`);
    return context.json(
      problems('server/mistake', 'The program made a mistake; the terminal says more.'),
      500,
    );
  });
  return app;
}

const problems = (code: string, message: string): { problems: Problem[] } => ({
  problems: [{ code, message, path: '', weight: 'error' }],
});

async function bodyOf(request: { json: () => Promise<unknown> }): Promise<unknown> {
  try {
    return await request.json();
  } catch (reason) {
    if (reason instanceof SyntaxError) return undefined;
    throw reason;
  }
}

interface CarOnFloor {
  readonly id: string;
  readonly name: string;
  readonly chassis: string;
  readonly manner: string;
  readonly invented: boolean;
  /** How many things keep the file from being worked with. */
  readonly problems: number;
}

/** Cars of which what the floor shows is kept until their files change. */
const MOST_ON_FLOOR = 24;

const toldOnFloor = lately(MOST_ON_FLOOR, sameSource, (source: CarSource) => {
  const read = readCar(source);
  if (!read.ok) return { problems: read.problems.length };
  const { name, chassis = '', manner = '', invented = false } = read.car.form.car;
  return { name, chassis, manner, invented, problems: 0 };
});

/** A car as the floor shows it. One whose file cannot be read is there too, under the name of its folder. */
async function carOnFloor(home: string, id: string): Promise<CarOnFloor> {
  const unknown = { id, name: id, chassis: '', manner: '', invented: false };
  try {
    return { ...unknown, ...toldOnFloor(sourceOf(await carText(home, id), `${id}/${CAR_FILE}`)) };
  } catch (reason) {
    if (!(reason instanceof FolderError)) throw reason;
    return { ...unknown, problems: 1 };
  }
}
