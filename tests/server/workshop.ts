/** A workshop in a folder of its own with the real server on a free port, for the tests of the server. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestContext } from 'node:test';
import { type Running, startServer } from '../../src/server/index.ts';

/** A car file in the making: much is missing, which must not keep it from being mended step by step. */
export const UNFINISHED = `# An invented example, half filled in.
flatpatch: 1
car:
  name: Invented 1 # to be asked: is it the second one?
  chassis: "007"

  note: came on a trailer
# the rest is still to be measured
spec: as arrived
`;

export interface Workshop extends Running {
  readonly home: string;
  readonly get: (path: string, headers?: Record<string, string>) => Promise<Answer>;
  readonly post: (path: string, body: unknown, headers?: Record<string, string>) => Promise<Answer>;
}

export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
  // the shape is what the tests themselves look at
  // biome-ignore lint/suspicious/noExplicitAny: an answer of any route
  readonly json: any;
}

export interface Ask {
  readonly method?: string;
  readonly path: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
}

/** A bare request: headers and path go out as they are given, which fetch would not do. */
export function ask(port: number, { method = 'GET', path, headers = {}, body }: Ask): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port, method, path, headers, agent: false }, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.on('end', () => {
        const text = Buffer.concat(parts).toString('utf8');
        const isJson = String(answer.headers['content-type']).startsWith('application/json');
        resolve({
          status: answer.statusCode ?? 0,
          headers: answer.headers,
          text,
          json: isJson ? JSON.parse(text) : undefined,
        });
      });
      answer.on('error', reject);
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

export const JSON_TYPE = { 'content-type': 'application/json' } as const;

/** @param cars texts of car.yaml by id */
export async function openWorkshop(
  t: TestContext,
  cars: Readonly<Record<string, string>>,
): Promise<Workshop> {
  const folder = await mkdtemp(join(tmpdir(), 'flatpatch-'));
  const home = join(folder, 'workshop');
  const web = join(folder, 'web');
  await mkdir(join(web, 'assets'), { recursive: true });
  await writeFile(join(web, 'index.html'), '<!doctype html><title>page</title>');
  await writeFile(join(web, 'assets', 'a.js'), 'export {};');
  await writeFile(join(folder, 'secret.txt'), 'not for anybody');
  for (const [id, text] of Object.entries(cars)) {
    await mkdir(join(home, id), { recursive: true });
    await writeFile(join(home, id, 'car.yaml'), text);
  }
  const running = await startServer({ home, port: 0, web });
  t.after(async () => {
    await running.close();
    await rm(folder, { recursive: true, force: true });
  });
  return {
    ...running,
    home,
    get: (path, headers = {}) => ask(running.port, { path, headers }),
    post: (path, body, headers = {}) =>
      ask(running.port, {
        method: 'POST',
        path,
        headers: { ...JSON_TYPE, ...headers },
        body: JSON.stringify(body),
      }),
  };
}
