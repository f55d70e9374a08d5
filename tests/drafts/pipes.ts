/** An invented set of two primaries, and templates of every kind, for the files that are made of them. */
import {
  bendWrap,
  flangeTemplate,
  mergeWrap,
  mitreWrap,
  type Pipe,
  saddleWrap,
  squareWrap,
  type Template,
} from '../../src/gaspath/pipework/index.ts';

const DEG = Math.PI / 180;

const tube = { od: 0.048, wall: 0.001, density: 8440 };

export const PIPES: readonly Pipe[] = [
  {
    name: '1',
    tube,
    start: { p: [0, 0, 0], d: [1, 0, 0] },
    elements: [
      { kind: 'straight', length: 0.06 },
      { kind: 'bend', radius: 0.072, angle: 90 * DEG, normal: [0, 0, 1] },
      { kind: 'straight', length: 0.1 },
      { kind: 'bend', radius: 0.072, angle: 45 * DEG, normal: [1, 0, 0] },
      { kind: 'bend', radius: 0.1, angle: 30 * DEG, normal: [1, 0, 0] },
      { kind: 'straight', length: 0.08 },
    ],
  },
  {
    name: '2',
    tube,
    start: { p: [0, 0, 0.25], d: [0, 1, 0] },
    elements: [
      { kind: 'straight', length: 0.05 },
      { kind: 'bend', radius: 0.072, angle: 150 * DEG, normal: [0, 0, 1] },
      { kind: 'straight', length: 0.2 },
    ],
  },
];

export const TEMPLATES: readonly Template[] = [
  mitreWrap({ name: 'Mitre of 22.5°', od: 0.048, mitre: 22.5 * DEG }),
  saddleWrap({
    name: 'Saddle',
    main: { od: 0.06 },
    branch: { od: 0.048, wall: 0.001 },
    angle: 45 * DEG,
    offset: 0.004,
    sits: 'bore',
  }),
  mergeWrap({ name: 'Merge, five into one', tubes: 5, od: 0.048, lean: 12 * DEG, outlet: 0.02 }),
  bendWrap({ name: 'Cut on a bend, 30°', od: 0.048, radius: 0.072, angle: 30 * DEG }),
  squareWrap({ name: 'Square cut of a tail, 120 mm', od: 0.12 }),
  flangeTemplate({
    name: 'Port flange, D',
    port: { kind: 'D', width: 0.042, height: 0.036, corner: 0.006 },
    bolts: [
      { at: { x: -0.04, y: 0.004 }, hole: 0.0085 },
      { at: { x: 0.04, y: -0.004 }, hole: 0.0085 },
    ],
    land: { port: 0.006, bolt: 0.008 },
  }),
];
