/**
 * An adjuster drawn with the way that it is turned, shifted or filled: what the hand does, seen from where.
 *
 * In    how it is moved (flatfloor/act.ts), how many units, the corner of the room that it has
 * Out   marks within DRAWING_WIDTH by DRAWING_HEIGHT; drawn for the eye, not to scale
 */
import type { Act } from '../questions/adjustment-card.ts';
import { plain, type Speech } from '../units/show.ts';
import { fromSI } from '../units/unit.ts';
import { ARROW_HEAD, arrow, arrowTip, label } from './arrow.ts';
import { bareWords } from './floor-words.ts';
import {
  arc,
  circle,
  DASH,
  LINE,
  line,
  type Mark,
  type PaperPoint,
  polyline,
  rectangle,
  SIZE,
  text,
} from './page.ts';
import { shiftDrawing, stackDrawing } from './shim-drawing.ts';

export const DRAWING_WIDTH = 62;
export const DRAWING_HEIGHT = 22;

export function adjusterDrawing(act: Act, units: number, at: PaperPoint, speech: Speech): Mark[] {
  switch (act.by) {
    case 'tube':
      return [
        ...tube(act, at),
        ...turned(act, units, at, `seen from ${act.tube === undefined ? 'R.H.' : act.tube.rightHand} end`),
      ];
    case 'end':
      return [...screwedEnd(act, at), ...turned(act, units, at, 'seen from its eye')];
    case 'platform':
      return platform(act.tighter, act.perTurn, units, at);
    case 'anchor':
      return anchor(act.tighter, units, at);
    case 'splines':
      return splines(act.rocker, act.anchor, at);
    case 'stack':
      return stackDrawing(act, at, speech);
    case 'shift':
      return shiftDrawing(act, at, speech);
    case 'pressure':
      return gauge(act.from, act.to, at, speech);
    case 'ballast':
      return ballast(act.from, act.to, at, speech);
  }
}

/** Middle of the side view above the corner, and how far it goes across. */
const MID = 11;
const SIDE = 40;
/** Middle of the view from the end. */
const END_VIEW = 52;

const box = (x: number, y: number, width: number, height: number, fill?: number): Mark =>
  rectangle({ x, y, width, height }, { weight: LINE.thin, ...(fill === undefined ? {} : { fill }) });

/** A rod end with its stem: eye at `x`, stem towards the tube. */
function rodEnd(x: number, y: number, sign: 1 | -1): Mark[] {
  const stem = { from: x + sign * 2.4, to: x + sign * 8 };
  return [
    box(Math.min(stem.from, stem.to), y - 0.9, Math.abs(stem.to - stem.from), 1.8, 1),
    ...[0.2, 0.4, 0.6, 0.8].map((part) => {
      const at = stem.from + (stem.to - stem.from) * part;
      return line({ x: at - 0.35, y: y + 0.9 }, { x: at + 0.35, y: y - 0.9 }, { weight: LINE.hair });
    }),
    circle({ x, y }, 2.5, { weight: LINE.thick }),
    circle({ x, y }, 1.1),
    // jam nut
    box(Math.min(stem.to, stem.to + sign * 1.7), y - 2, 1.7, 4, 1),
  ];
}

/** A tube between two screwed ends, and which way it grows; the right-hand thread is drawn at the left. */
function tube({ longer, tube: ends }: Extract<Act, { by: 'tube' | 'end' }>, at: PaperPoint): Mark[] {
  const y = at.y + MID;
  const [left, right] = [at.x + 3, at.x + SIDE - 3];
  const [a, b] = [left + 9.7, right - 9.7];
  const above = y - 6;
  return [
    ...rodEnd(left, y, 1),
    ...rodEnd(right, y, -1),
    box(a, y - 2.3, b - a, 4.6, 1),
    line({ x: a, y: y - 0.8 }, { x: b, y: y - 0.8 }, { weight: LINE.hair }),
    line({ x: a, y: y + 0.8 }, { x: b, y: y + 0.8 }, { weight: LINE.hair }),
    ...(longer
      ? [
          ...arrow({ x: at.x + SIDE / 2 - 5, y: above }, { x: left - 1, y: above }),
          ...arrow({ x: at.x + SIDE / 2 + 5, y: above }, { x: right + 1, y: above }),
        ]
      : [
          ...arrow({ x: left - 1, y: above }, { x: at.x + SIDE / 2 - 4, y: above }),
          ...arrow({ x: right + 1, y: above }, { x: at.x + SIDE / 2 + 4, y: above }),
        ]),
    label({ x: at.x + SIDE / 2, y: above - 1.8 }, longer ? 'longer' : 'shorter'),
    label({ x: left + 5.5, y: y + 5.6 }, 'R.H.'),
    label({ x: right - 5.5, y: y + 5.6 }, 'L.H.'),
    ...(ends === undefined
      ? []
      : [
          label({ x: left + 5.5, y: y + 8.6 }, ends.rightHand),
          label({ x: right - 5.5, y: y + 8.6 }, ends.leftHand),
        ]),
  ];
}

function screwedEnd(act: Extract<Act, { by: 'tube' | 'end' }>, at: PaperPoint): Mark[] {
  const y = at.y + MID;
  const left = at.x + 8;
  const start = left + 9.7;
  const above = y - 6;
  const hand = act.ends[0]?.hand;
  return [
    ...rodEnd(left, y, 1),
    polyline(
      [
        { x: at.x + SIDE, y: y - 2.3 },
        { x: start, y: y - 2.3 },
        { x: start, y: y + 2.3 },
        { x: at.x + SIDE, y: y + 2.3 },
      ],
      { weight: LINE.thin },
    ),
    line({ x: at.x + SIDE, y: y - 3.4 }, { x: at.x + SIDE, y: y + 3.4 }, { dash: DASH.centre }),
    ...(act.longer
      ? arrow({ x: left + 10, y: above }, { x: left - 3, y: above })
      : arrow({ x: left - 3, y: above }, { x: left + 10, y: above })),
    label({ x: left + 4, y: above - 1.8 }, act.longer ? 'out, longer' : 'in, shorter'),
    label(
      { x: left + 6, y: y + 5.6 },
      hand === undefined ? 'hand not in the file' : hand === 'right' ? 'R.H.' : 'L.H.',
    ),
  ];
}

/** The hexagon from its end, the turn as an arc from a mark at the top, the count within. */
function turned(
  { way, perTurn, by }: Extract<Act, { by: 'tube' | 'end' }>,
  units: number,
  at: PaperPoint,
  seen: string,
): Mark[] {
  const centre = { x: at.x + END_VIEW, y: at.y + 9 };
  const count = Math.abs(units);
  const inner = [
    ...(by === 'tube' ? [hexagon(centre, 5)] : [circle(centre, 4.6, { weight: LINE.thick })]),
    text({ x: centre.x, y: centre.y + 1.5 }, String(count), {
      size: SIZE.figure,
      weight: 'bold',
      align: 'middle',
    }),
  ];
  if (way === undefined) return inner;
  const whole = count >= perTurn;
  const sweep = whole ? 330 : (360 * count) / perTurn;
  return [
    ...inner,
    line({ x: centre.x, y: centre.y - 5 }, { x: centre.x, y: centre.y - 8.4 }, { weight: LINE.thin }),
    ...turnArrow(centre, 7, sweep, way),
    label({ x: centre.x, y: at.y + 18.9 }, way),
    label({ x: centre.x, y: at.y + 21.6 }, seen),
  ];
}

/** An arrow round a middle from the top, as the hand goes. */
function turnArrow(
  centre: PaperPoint,
  radius: number,
  sweep: number,
  way: 'clockwise' | 'anticlockwise',
): Mark[] {
  const sign = way === 'clockwise' ? -1 : 1;
  const end = 90 + sign * sweep;
  const tip = {
    x: centre.x + radius * Math.cos((end * Math.PI) / 180),
    y: centre.y - radius * Math.sin((end * Math.PI) / 180),
  };
  // the head is as long as it is: its chord lies back along the arc by half its length
  const back = (ARROW_HEAD / radius / 2) * (180 / Math.PI);
  return [
    arc({ centre, radius, from: Math.min(90, end), to: Math.max(90, end) }, { weight: LINE.thick }),
    arrowTip(tip, end + sign * (90 - back)),
  ];
}

function hexagon(centre: PaperPoint, radius: number): Mark {
  return polyline(
    Array.from({ length: 6 }, (_, k) => ({
      x: centre.x + radius * Math.cos((k * Math.PI) / 3),
      y: centre.y + radius * Math.sin((k * Math.PI) / 3),
    })),
    { closed: true, weight: LINE.thick, fill: 1 },
  );
}

/** Spring platform on its body: towards the spring or away from it; the ring with its slots from the end. */
function platform(tighter: boolean, perTurn: number, units: number, at: PaperPoint): Mark[] {
  const y = at.y + MID;
  const ring = at.x + 12;
  const above = y - 7;
  const coils = 7;
  const spring = Array.from({ length: coils + 1 }, (_, k) => ({
    x: ring + 3 + (k * (SIDE - 16)) / coils,
    y: y + (k % 2 === 0 ? -4 : 4),
  }));
  const centre = { x: at.x + END_VIEW, y };
  return [
    box(at.x, y - 2.4, SIDE - 8, 4.8, 1),
    ...Array.from({ length: 9 }, (_, k) =>
      line(
        { x: at.x + 2 + k * 1.6, y: y + 2.4 },
        { x: at.x + 2.6 + k * 1.6, y: y - 2.4 },
        { weight: LINE.hair },
      ),
    ),
    polyline(spring, { weight: LINE.thick }),
    box(ring, y - 5, 3, 10, 0.85),
    ...(tighter
      ? arrow({ x: ring - 3, y: above }, { x: ring + 13, y: above })
      : arrow({ x: ring + 10, y: above }, { x: ring - 6, y: above })),
    label(
      { x: at.x + SIDE / 2, y: y + 8.6 },
      tighter ? 'towards the spring: more preload' : 'away from the spring: less preload',
    ),
    circle(centre, 6.4, { weight: LINE.thick }),
    ...Array.from({ length: Math.round(perTurn) }, (_, k) => {
      const angle = (2 * Math.PI * k) / Math.round(perTurn);
      const on = (radius: number): PaperPoint => ({
        x: centre.x + radius * Math.sin(angle),
        y: centre.y - radius * Math.cos(angle),
      });
      return line(on(5), on(6.4), { weight: LINE.thick });
    }),
    text({ x: centre.x, y: centre.y + 1.5 }, String(Math.abs(units)), {
      size: SIZE.figure,
      weight: 'bold',
      align: 'middle',
    }),
    label({ x: centre.x, y: y + 10.4 }, `of ${Math.round(perTurn)} slots a turn`),
  ];
}

/** Anchor lever of a torsion bar on its screw. */
function anchor(tighter: boolean, units: number, at: PaperPoint): Mark[] {
  const y = at.y + MID;
  const bar = { x: at.x + 30, y: y + 5 };
  const centre = { x: at.x + END_VIEW, y };
  const end = { x: bar.x - 18, y: bar.y - 9 };
  const above = end.y;
  return [
    line(bar, end, { weight: LINE.border }),
    circle(bar, 3, { weight: LINE.thick }),
    circle(bar, 1.6),
    box(at.x + 1, end.y - 1, 11, 2, 1),
    box(at.x, end.y - 2.2, 2.4, 4.4, 1),
    ...(tighter
      ? arrow({ x: end.x + 4, y: above }, { x: end.x + 15, y: above })
      : arrow({ x: end.x + 15, y: above }, { x: end.x + 4, y: above })),
    label({ x: at.x + 20, y: y + 10.4 }, tighter ? 'tighter: more twist' : 'slacker: less twist'),
    hexagon(centre, 5),
    text({ x: centre.x, y: centre.y + 1.5 }, String(Math.abs(units)), {
      size: SIZE.figure,
      weight: 'bold',
      align: 'middle',
    }),
  ];
}

/** Two splined ends, each with the teeth that it goes on or back. */
function splines(rocker: number, held: number, at: PaperPoint): Mark[] {
  const end = (x: number, name: string, teeth: number): Mark[] => {
    const centre = { x, y: at.y + MID - 1 };
    const points = Array.from({ length: 48 }, (_, k) => {
      const radius = k % 2 === 0 ? 6.4 : 5.4;
      const angle = (2 * Math.PI * k) / 48;
      return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
    });
    return [
      polyline(points, { closed: true, weight: LINE.thin }),
      text({ x, y: centre.y + 1.5 }, teeth === 0 ? '0' : `${teeth > 0 ? '+' : '−'}${Math.abs(teeth)}`, {
        size: SIZE.figure,
        weight: 'bold',
        align: 'middle',
      }),
      label({ x, y: centre.y + 10.4 }, name),
    ];
  };
  return [...end(at.x + 16, 'at the rocker', rocker), ...end(at.x + 44, 'at the anchor', held)];
}

function fromTo(from: string, to: string, unit: string, at: PaperPoint): Mark[] {
  const y = at.y + MID + 1.5;
  const words = (x: number, said: string, weight: 'regular' | 'bold'): Mark =>
    text({ x, y }, said, { size: SIZE.figure, weight, align: 'middle' });
  return [
    words(at.x + 25, from, 'regular'),
    ...arrow({ x: at.x + 31, y: y - 1.5 }, { x: at.x + 39, y: y - 1.5 }),
    words(at.x + 50.5, `${to} ${unit}`, 'bold'),
  ];
}

function gauge(from: number, to: number, at: PaperPoint, speech: Speech): Mark[] {
  const centre = { x: at.x + 10, y: at.y + MID };
  const hand = (angle: number, weight: number, dash?: readonly number[]): Mark =>
    line(
      centre,
      {
        x: centre.x + 5.6 * Math.cos((angle * Math.PI) / 180),
        y: centre.y - 5.6 * Math.sin((angle * Math.PI) / 180),
      },
      { weight, ...(dash === undefined ? {} : { dash }) },
    );
  const more = to > from;
  return [
    circle(centre, 7.4, { weight: LINE.thick }),
    hand(90, LINE.thin, [1, 0.8]),
    hand(more ? 45 : 135, LINE.thick),
    circle(centre, 0.9),
    ...fromTo(
      bareWords('pressure', from, speech),
      bareWords('pressure', to, speech),
      speech === 'mm-N' ? 'bar' : 'psi',
      at,
    ),
  ];
}

function ballast(from: number, to: number, at: PaperPoint, speech: Speech): Mark[] {
  const unit = speech === 'mm-N' ? 'kg' : 'lb';
  const y = at.y + MID;
  const said = (kilograms: number): string => plain(fromSI(kilograms, unit), 1);
  return [
    box(at.x + 4, y + 1, 13, 5, 0.85),
    ...(to > from
      ? arrow({ x: at.x + 10.5, y: y - 8 }, { x: at.x + 10.5, y: y })
      : arrow({ x: at.x + 10.5, y: y }, { x: at.x + 10.5, y: y - 8 })),
    ...fromTo(said(from), said(to), unit, at),
  ];
}
