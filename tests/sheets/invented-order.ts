/** An invented bar for the tests of the sheets. Belongs on no car. */
import type { BarOrder } from '../../src/sheets/bar-order.ts';
import type { SheetHead } from '../../src/sheets/frame.ts';

export const inventedHead: Omit<SheetHead, 'title' | 'of'> = {
  workshop: 'Invented Workshop',
  car: 'Invented 01',
  chassis: 'INV-01-03',
  spec: 'as run',
  invented: true,
  date: '2004-05-06',
  version: '0.1.0',
  paper: 'A4',
  speech: 'mm-N',
  readings: '41 of 212 not measured',
};

export const inventedOrder: BarOrder = {
  partNumber: 'INV-TB-1600',
  wheel: { end: 'front', side: 'left' },
  quantity: 2,
  diameter: 0.016,
  bore: 0.006,
  parallelLength: 0.38,
  rockerEnd: { form: 'radius', headDiameter: 0.026, size: 0.02, splines: 36, length: 0.025 },
  anchorEnd: { form: 'radius', headDiameter: 0.024, size: 0.02, splines: 33 },
  material: {
    name: '300M bar',
    means: '4340 with silicon, vacuum remelted, tempered at about 300 °C',
    shearModulus: 79e9,
    shearModulusRange: { low: 77e9, high: 80e9 },
    density: 7850,
    tensileStrength: { low: 1862e6, high: 1981e6 },
    shearYield: 894e6,
    source: 'supplier sheets (from memory)',
    note: 'takes hydrogen when plated or pickled; a corrosion pit breaks it: keep it dry and whole-skinned',
  },
  surface: 'ground and shot-peened',
  hand: 'right',
  fullTorque: 520,
  fullBump: { travel: 0.05, by: 'damper closed', stopped: true },
  staticTorque: 210,
};
