/** Figures of each stud of a joint, and of each plate that lets the engine grow. */
import { boundsOf, type PlateUnderLoad, type StudUnderLoad } from '../joint/joint-under.ts';
import { type FigureNote, notesOf, type Put } from './note.ts';

const studs = notesOf('studs');

const solved = { method: 'the face solved, in contact only where it is pressed', source: 'JT-1' } as const;
const tightened = {
  method: 'as tightened, settled where it says so',
  source: 'ST-4, ST-9, ST-10, ST-14',
} as const;
const bounds = {
  method: 'the face solved at both ends of the preload, cold and warm, all studs alike',
  source: 'JT-1, ST-15',
} as const;

type Half = Omit<FigureNote, 'id' | 'stop'>;

const N = { symbol: 'F', unit: 'N' } as const;

const STUD = {
  preloadLow: { means: 'preload, low end', ...N, rank: 3, ...tightened },
  preload: { means: 'preload', symbol: 'F_V', unit: 'N', rank: 2 },
  preloadHigh: { means: 'preload, high end, not settled', ...N, rank: 3, ...tightened },
  force: { means: 'tension under the load', ...N, rank: 2, ...solved },
  forceHigh: { means: 'tension under the load, high end', ...N, rank: 3, ...solved },
  forceLeast: { means: 'tension under the load, least of all ends', ...N, rank: 3, ...bounds },
  forceMost: { means: 'tension under the load, most of all ends', ...N, rank: 2, ...bounds },
  pad: { means: 'left on its pad, low end', ...N, rank: 1, ...solved },
  padHot: { means: 'left on its pad when warm, low end', ...N, rank: 2, ...solved },
  padLeast: { means: 'left on its pad, least of all ends', ...N, rank: 3, ...bounds },
  padMost: { means: 'left on its pad, most of all ends', ...N, rank: 3, ...bounds },
  rigid: {
    means: 'its part of the outside load by hand',
    symbol: 'F_r',
    unit: 'N',
    rank: 3,
    say: 'stiff face, studs alone: a check; while closed the stud feels about Φ of it',
    method: 'pull shared alike, moments by distance from the centre',
    source: 'JT-11',
  },
  yieldShare: {
    means: 'stress over yield while tightening, high end',
    symbol: 'σ',
    unit: 'share',
    rank: 2,
    method: 'equivalent stress of pull and thread torque',
    source: 'ST-7',
  },
  loadFactor: {
    means: 'part of an outside load that the stud feels while closed',
    symbol: 'Φ',
    unit: '1',
    rank: 3,
    method: 'compliances of stud and parts',
    source: 'ST-13',
  },
  heat: {
    means: 'change of preload when warm',
    ...N,
    rank: 3,
    method: 'growth of stud and parts',
    source: 'ST-15',
  },
} as const satisfies Record<string, Half>;

const PLATE = {
  force: { means: 'force along it, pull positive', symbol: 'F_p', unit: 'N', rank: 2, ...solved },
  least: { means: 'force along it, least of all ends', symbol: 'F_p', unit: 'N', rank: 3, ...bounds },
  most: { means: 'force along it, most of all ends', symbol: 'F_p', unit: 'N', rank: 3, ...bounds },
  growth: { means: 'how far the warm engine bends it', symbol: 'δ_e', unit: 'm', rank: 2 },
  bend: {
    means: 'bending stress at its fixings when warm',
    symbol: 'σ_p',
    unit: 'Pa',
    rank: 2,
    say: 'why such plates are thin: half the thickness, half the stress',
  },
} as const satisfies Record<string, Half>;

/** Notes of each name, made once: a spread asks for them thousands of times. */
function named<K extends string>(
  kind: string,
  notes: Readonly<Record<K, Half>>,
): (name: string) => Readonly<Record<K, FigureNote>> {
  const made = new Map<string, Readonly<Record<K, FigureNote>>>();
  return (name) => {
    const found =
      made.get(name) ??
      (Object.fromEntries(
        Object.entries<Half>(notes).map(([what, note]) => [
          what,
          studs({ ...note, id: `${kind}.${name}.${what}`, means: `${name}: ${note.means}` }),
        ]),
      ) as Record<K, FigureNote>);
    made.set(name, found);
    return found;
  };
}

const studNotes = named('stud', STUD);
const plateNotes = named('plate', PLATE);

export function putStud(stud: StudUnderLoad, warmed: boolean, put: Put): void {
  const { sort } = stud;
  const note = studNotes(stud.name);
  const [force, pad] = [boundsOf(stud.forces), boundsOf(stud.pads)];
  put(note.preloadLow, sort.preload.low);
  put(note.preload, sort.preload.middle);
  put(note.preloadHigh, sort.preload.high);
  put(note.force, stud.force.middle);
  put(note.forceHigh, stud.force.high);
  put(note.forceLeast, force.least);
  put(note.forceMost, force.most);
  put(note.pad, stud.pad.low);
  if (warmed) put(note.padHot, stud.pads.hot.low);
  put(note.padLeast, pad.least);
  put(note.padMost, pad.most);
  put(note.rigid, stud.rigid);
  put(note.yieldShare, sort.tightening / sort.material.yield);
  put(note.loadFactor, sort.loadFactor);
  put(note.heat, sort.heat);
}

export function putPlate(plate: PlateUnderLoad, put: Put): void {
  const note = plateNotes(plate.name);
  put(note.force, plate.force);
  put(note.least, plate.least);
  put(note.most, plate.most);
  if (plate.bent === undefined) return;
  put(note.growth, plate.bent.growth);
  put(note.bend, plate.bent.stress);
}
