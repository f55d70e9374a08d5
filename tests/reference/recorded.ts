/**
 * Demo cars handed to a model in Python, and its answers: asked afresh where Python with SciPy is there, else taken
 * from the record that stands beside the model.
 *
 * FLATPATCH_PYTHON names another Python than the two that are tried; FLATPATCH_REMAKE=1 writes the record anew.
 */
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Car, openCar } from '../../src/questions/index.ts';

/** Of the material table; handed over like the points, since it is what is done with them that is compared. */
export const SHEAR_MODULUS = { '300M bar': 79e9, '4340 bar': 79.3e9 };

const REMAKING = process.env.FLATPATCH_REMAKE === '1';
const path = (inside: string): string => fileURLToPath(new URL(`../../${inside}`, import.meta.url));

/** Readings without their spread and source: the bare numbers in SI. */
export function plain(form: unknown): unknown {
  if (Array.isArray(form)) return form.map(plain);
  if (typeof form !== 'object' || form === null) return form;
  if ('value' in form && (typeof form.value === 'number' || Array.isArray(form.value))) return form.value;
  return Object.fromEntries(Object.entries(form).map(([key, value]) => [key, plain(value)]));
}

export interface HandedCar {
  readonly car: Car;
  /** Of every file in its folder: tells whether a record is of these files. */
  readonly hash: string;
}

export function handedCar(name: string): HandedCar {
  const folder = path(`cars/${name}`);
  const files = Object.fromEntries(
    readdirSync(folder)
      .sort()
      .map((file) => [file, readFileSync(`${folder}/${file}`, 'utf8')]),
  );
  const is = openCar({ text: files['car.yaml']!, file: 'car.yaml', files });
  assert.ok(is.ok, `${name} is read`);
  return { car: is.car, hash: createHash('sha256').update(JSON.stringify(files)).digest('hex') };
}

export interface AskedOfPython {
  /** Of the model and of its record, inside the project. */
  readonly script: string;
  readonly record: string;
  /** The command that writes the record anew. */
  readonly remake: string;
  readonly cars: Readonly<Record<string, string>>;
  readonly asked: string;
  /** Digits kept in the record: more than any tolerance asks for. */
  readonly digits: number;
}

export interface Answered<T> {
  readonly answers: T;
  /** What they are from, for the test to say. */
  readonly from: string;
}

export function answeredByPython<T>(of: AskedOfPython): Answered<T> {
  const pythons = process.env.FLATPATCH_PYTHON?.split(' ') ?? ['python3', '/usr/bin/python3'];
  const python = pythons.find((each) => spawnSync(each, ['-c', 'import scipy']).status === 0);
  if (python === undefined) {
    assert.ok(!REMAKING, `no SciPy for ${pythons.join(' or ')}: the record cannot be remade`);
    return {
      answers: recordIn<{ answers: T }>(of.record).answers,
      from: 'the record: no Python with SciPy here',
    };
  }
  const run = spawnSync(python, ['-B', path(of.script)], {
    input: of.asked,
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  assert.equal(run.status, 0, run.stderr);
  const answers = JSON.parse(run.stdout) as T;
  if (REMAKING) {
    const short = (_: string, v: unknown) => (typeof v === 'number' ? Number(v.toPrecision(of.digits)) : v);
    const text = JSON.stringify({ remake: of.remake, cars: of.cars, answers }, short, 1);
    writeFileSync(path(of.record), `${text}\n`);
  }
  return { answers, from: `${python}, asked now` };
}

const recordIn = <T>(file: string): T => JSON.parse(readFileSync(path(file), 'utf8')) as T;

/** Fails where the demo cars have changed since the record was made. */
export function recordIsOf({ record, cars, remake }: Omit<AskedOfPython, 'asked'>): void {
  const { cars: made } = recordIn<{ cars: Record<string, string> }>(record);
  assert.deepEqual(made, cars, `the demo cars have changed: remake the record with\n  ${remake}`);
}
