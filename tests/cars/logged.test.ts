/** Logs: read as they stand, gaps told and never filled, what contradicts itself told, a row as what the car is doing. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { doubtsOf } from '../../src/logged/doubts.ts';
import { type Logged, type LogOptions, readLog } from '../../src/logged/read-log.ts';
import { extremesOf, rowAt } from '../../src/logged/rows.ts';
import { doingInRow, logOf } from '../../src/questions/index.ts';
import { near } from '../near.ts';
import { demo, demoSource, opened } from './demo.ts';

// ISO 80000-3 / BIPM SI Brochure: standard acceleration of free fall, m/s^2
const g = 9.80665;
const LAP = readFileSync(new URL('../../cars/fenwold-201/lap.csv', import.meta.url), 'utf8');
const COLUMNS: LogOptions['columns'] = {
  time: { heading: 'Time', unit: 's' },
  speed: { heading: 'Speed', unit: 'km/h' },
  longitudinal: { heading: 'Acc forward', unit: 'g' },
  lateral: { heading: 'Acc left', unit: 'g' },
  vertical: { heading: 'Acc up', unit: 'g', rest: g },
  rack: { heading: 'Rack', unit: 'mm' },
};

const read = (text = LAP, columns = COLUMNS): Logged => {
  const is = readLog(text, { file: 'lap.csv', columns });
  assert.ok(is.ok, JSON.stringify(is.ok ? '' : is.problems));
  return is.log;
};
const refused = (text: string, columns = COLUMNS) => {
  const is = readLog(text, { file: 'lap.csv', columns });
  assert.ok(!is.ok);
  return is.problems[0]!;
};
const codes = (log: Logged): string[] => doubtsOf(log, 'lap.csv').map(({ code }) => code);
const changed = (of: Partial<typeof COLUMNS>): typeof COLUMNS => ({ ...COLUMNS, ...of });

test('cells become SI by the unit, sign and rest of their column', () => {
  const log = read();
  const row = LAP.split('\n')[812 - 1]!.split(',').map(Number);
  const at = log.lines.indexOf(812);
  near(log.channels.speed![at]!, row[1]! / 3.6, 1e-12);
  near(log.channels.longitudinal![at]!, row[2]! * g, 1e-12);
  near(log.channels.vertical![at]!, (row[4]! - 1) * g, 1e-12);
  near(log.channels.rack![at]!, row[5]! / 1000, 1e-12);
  const turned = read(LAP, changed({ lateral: { heading: 'Acc left', unit: 'g', reversed: true } }));
  near(turned.channels.lateral![at]!, -log.channels.lateral![at]!, 0);
});

test('a gap in time and empty cells are told with their lines, and stay gaps', () => {
  const log = read();
  const told = doubtsOf(log, 'lap.csv');
  assert.deepEqual(
    told.map(({ code, line }) => [code, line]),
    [
      ['log/gap', 937],
      ['log/gap', 490],
    ],
  );
  assert.ok(Number.isNaN(log.channels.lateral![log.lines.indexOf(938)]!));
  const row = doingInRow('lap', log, log.lines.indexOf(938));
  assert.ok(!row.reached && /line 938.*sideways acceleration/i.test(row.message), JSON.stringify(row));
  // 24.5 s lies in the gap of 0.4 s: the nearest row is no answer for the middle of a longer one
  assert.equal(rowAt(log, 99), undefined);
  assert.equal(log.lines[rowAt(log, 40.8)!], 812);
});

test('signs and units that contradict the speed, the rack or gravity are told', () => {
  assert.ok(
    codes(read(LAP, changed({ longitudinal: { ...COLUMNS.longitudinal!, reversed: true } }))).includes(
      'log/reversed',
    ),
  );
  assert.ok(
    codes(read(LAP, changed({ rack: { ...COLUMNS.rack!, reversed: true } }))).includes('log/reversed'),
  );
  assert.ok(
    codes(read(LAP, changed({ longitudinal: { heading: 'Acc forward', unit: 'm/s^2' } }))).includes(
      'log/unit',
    ),
  );
  assert.ok(codes(read(LAP, changed({ vertical: { heading: 'Acc up', unit: 'g' } }))).includes('log/rest'));
  assert.ok(codes(read(LAP, changed({ speed: { heading: 'Speed', unit: 'm/s' } }))).includes('log/range'));
});

test('what cannot be read is told with line and what would do', () => {
  assert.match(refused('').message, /empty/);
  assert.match(refused(LAP.split('\n').slice(0, 2).join('\n')).message, /no rows|no comma/);
  const heading = refused(LAP, changed({ rack: { heading: 'Rak', unit: 'mm' } }));
  assert.match(heading.message, /No column is headed "Rak"/);
  assert.match(heading.remedy!, /Did you mean "Rack"/);
  assert.equal(heading.line, 2);
  assert.match(
    refused(LAP.replace('Rack', 'Speed'), changed({ rack: undefined })).message,
    /Two columns are headed "Speed"/,
  );
  assert.match(refused(LAP.replace(/^(\d.*),[^,]*$/gm, '$1,none')).message, /no number in any row/);
});

test('cut off in mid-line, semicolons with decimal commas, remarks of a logger above the heading', () => {
  const cut = read(LAP.slice(0, 20_000).replace(/\d,[^,]*$/, ''));
  assert.ok(
    doubtsOf(cut, 'lap.csv').some(({ code, line }) => code === 'log/gap' && line === cut.lines.at(-1)),
  );
  const european = LAP.replaceAll(',', ';').replaceAll('.', ',');
  near(read(european).channels.speed![0]!, 208 / 3.6, 1e-12);
  const above = `Session;shakedown\nDriver;nobody\n${LAP.split('\n').slice(1).join('\n').replaceAll(',', ';')}`;
  near(read(above).channels.speed![0]!, 208 / 3.6, 1e-12);
});

test('the hardest rows are the largest and least of their column among whole rows', () => {
  const log = read();
  const by = Object.fromEntries(extremesOf(log).map(({ name, row }) => [name, row]));
  const column = LAP.trim()
    .split('\n')
    .slice(2)
    .map((line) => line.split(','));
  const whole = column.filter((cells) => cells.every((cell) => cell !== ''));
  near(
    log.channels.longitudinal![by['hardest-braking']!]!,
    g * Math.min(...whole.map((cells) => Number(cells[2]))),
    1e-9,
  );
  near(
    log.channels.lateral![by['hardest-left']!]!,
    g * Math.max(...whole.map((cells) => Number(cells[3]))),
    1e-9,
  );
  near(log.channels.speed![by.fastest!]! * 3.6, Math.max(...whole.map((cells) => Number(cells[1]))), 1e-9);
});

test('tyre loads of a log are put on the tyres; a load below nothing is refused', () => {
  const text = 'Time,FL,FR\n0.00,3100,2900\n0.05,3150,-40\n0.10,3120,2950\n';
  const log = read(text, {
    time: { heading: 'Time', unit: 's' },
    loadFrontLeft: { heading: 'FL', unit: 'N', rest: 100 },
    loadFrontRight: { heading: 'FR', unit: 'N' },
  });
  const row = doingInRow('lap', log, 0);
  assert.ok(row.reached);
  assert.deepEqual(row.doing.contacts, { frontLeft: { up: 3000 }, frontRight: { up: 2900 } });
  assert.ok(row.notes.some((note) => note.includes('some tyres only')));
  const below = doingInRow('lap', log, 1);
  assert.ok(!below.reached && below.message.includes('below nothing'));
});

test('the car names its log; a log that is away or unknown is told, and the car opens all the same', () => {
  const car = demo('fenwold-201');
  const is = logOf(car, { 'lap.csv': LAP }, 'lap');
  assert.ok(is.reached && is.log.lines.length === 1234);
  const away = logOf(car, {}, 'lap');
  assert.ok(!away.reached && away.problems[0]!.code === 'log/no-file');
  const unknown = logOf(car, { 'lap.csv': LAP }, 'lapp');
  assert.ok(!unknown.reached && /Did you mean "lap"/.test(unknown.problems[0]!.remedy!));
  assert.ok(!logOf(car, { 'lap.csv': LAP }, '__proto__').reached);
  assert.throws(
    () =>
      opened(
        demoSource('fenwold-201', (text) =>
          text.replace('heading: Speed, unit: km/h', 'heading: Speed, unit: mm'),
        ),
      ),
    /log\/unit/,
  );
});
