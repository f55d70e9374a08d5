/**
 * The descent of the finder against SciPy's SLSQP, a general-purpose optimiser, in the same run: the same pipes laid
 * by chance, the same residuals and slopes, the collector held where it was drawn.
 *
 *   node --import tsx bench/route-descent.ts [--starts 10]
 *
 * SLSQP is given the sum of squares and its slopes, which are worked out here for both; its time is its
 * own and that of these, without what passes between the two programs. Nothing is laid anew: this is one descent, of which the search makes many.
 */
import { spawn, spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { Chance } from '../src/gaspath/route/chance.ts';
import { descend, USUAL, work } from '../src/gaspath/route/descent.ts';
import { layoutOf, putLayout } from '../src/gaspath/route/layout.ts';
import { legalOrders } from '../src/gaspath/route/order.ts';
import { Rig } from '../src/gaspath/route/rig.ts';
import { siteOf } from '../src/gaspath/route/site.ts';
import { drawOrder, drawPipe, drawPose } from '../src/gaspath/route/starts.ts';
import { natural, readMade } from './route/make.ts';

const given = process.argv.indexOf('--starts');
const STARTS = given < 0 ? 10 : Number(process.argv[given + 1]);
/** A sum of squares that is as good as none, mm^2. */
const OUT = 1e-6;
const LEVELS = [1, 2, 3, 4, 5, 6];

const python = ['python3', '/usr/bin/python3'].find(
  (each) => spawnSync(each, ['-c', 'import scipy']).status === 0,
);

/** Everything laid by chance, with a corner more than most pipes need. */
function laid(level: number, seed: number): Rig {
  const site = siteOf(readMade(natural(level, seed)));
  const rig = new Rig(site);
  const chance = new Chance(1000 * level + seed);
  rig.margin = 1.2;
  rig.spacing = 16;
  drawPose(rig, chance);
  drawOrder(rig, legalOrders(site.problem), chance).forEach((inlet, i) => {
    rig.inlets[i] = inlet;
  });
  rig.moves.fill(true);
  rig.poseMoves = false;
  rig.pipes.forEach((_, i) => {
    drawPipe(rig, i, 4, chance);
  });
  rig.enter();
  rig.seat();
  return rig;
}

const numbersOf = (rig: Rig): Float64Array =>
  Float64Array.from(rig.pipes.flatMap((pipe) => [...pipe.x.subarray(0, pipe.numbers)]));

function put(rig: Rig, x: Float64Array): void {
  let from = 0;
  for (const pipe of rig.pipes) {
    pipe.x.set(x.subarray(from, from + pipe.numbers));
    from += pipe.numbers;
  }
  rig.seat();
  rig.layAll(true);
}

interface Came {
  readonly cost: number;
  readonly milliseconds: number;
  readonly asked: number;
}

function ours(rig: Rig): Came {
  const before = work.done;
  const start = performance.now();
  descend(rig, { ...USUAL, iterations: 200 });
  return { cost: rig.cost, milliseconds: performance.now() - start, asked: work.done - before };
}

class Slsqp {
  private readonly child;
  private kept = Buffer.alloc(0);
  private wake: (() => void) | undefined;

  constructor(command: string) {
    this.child = spawn(command, [fileURLToPath(new URL('route_slsqp.py', import.meta.url))], {
      stdio: ['pipe', 'pipe', 'inherit'],
    });
    this.child.stdout.on('data', (more: Buffer) => {
      this.kept = Buffer.concat([this.kept, more]);
      this.wake?.();
    });
  }

  async from(rig: Rig): Promise<Came> {
    const x0 = numbersOf(rig);
    const n = x0.length;
    let here = 0;
    let asked = 0;
    this.tell(Float64Array.from([n, ...x0]));
    for (;;) {
      const [kind, ...x] = await this.hear(1 + n);
      const start = performance.now();
      put(rig, Float64Array.from(x));
      const cost = rig.weigh(true);
      // it ends with its own time, and one that it may not be nothing
      if (kind! > 0) return { cost, milliseconds: here + kind! - 1, asked };
      here += performance.now() - start;
      asked += 1;
      // the slope of half the sum of squares is what the finder keeps
      this.tell(Float64Array.from([cost, ...rig.slope.subarray(0, n).map((each) => 2 * each)]));
    }
  }

  end(): void {
    this.child.stdin.end();
  }

  private tell(of: Float64Array): void {
    this.child.stdin.write(Buffer.from(of.buffer));
  }

  private async hear(count: number): Promise<Float64Array> {
    while (this.kept.length < 8 * count) {
      await new Promise<void>((resolve) => {
        this.wake = resolve;
      });
    }
    const part = Uint8Array.from(this.kept.subarray(0, 8 * count));
    this.kept = this.kept.subarray(8 * count);
    return new Float64Array(part.buffer);
  }
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;

function tell(name: string, came: readonly Came[]): void {
  const out = came.filter(({ cost }) => cost <= OUT);
  process.stdout.write(
    `  ${name}: ${out.length} of ${came.length} come out; median ${median(came.map(({ milliseconds }) => milliseconds)).toFixed(0)} ms and ${median(came.map(({ asked }) => asked)).toFixed(0)} evaluations a start\n`,
  );
}

if (python === undefined) process.stdout.write('Python with SciPy is not here: nothing to compare with\n');
else {
  const slsqp = new Slsqp(python);
  const all = { ours: [] as Came[], slsqp: [] as Came[] };
  for (const level of LEVELS) {
    for (let seed = 1; seed <= STARTS; seed += 1) {
      const rig = laid(level, seed);
      const before = layoutOf(rig);
      all.slsqp.push(await slsqp.from(rig));
      putLayout(rig, before);
      all.ours.push(ours(rig));
    }
  }
  slsqp.end();
  process.stdout.write(`${all.ours.length} starts of pipes laid by chance, collector held:\n`);
  tell('ours', all.ours);
  tell("SciPy's SLSQP", all.slsqp);
  const time = (of: readonly Came[]): number => of.reduce((sum, { milliseconds }) => sum + milliseconds, 0);
  const out = (of: readonly Came[]): number => of.filter(({ cost }) => cost <= OUT).length;
  process.stdout.write(
    `  time for each that comes out: ours ${(time(all.ours) / out(all.ours)).toFixed(0)} ms, SLSQP ${(time(all.slsqp) / out(all.slsqp)).toFixed(0)} ms\n`,
  );
}
