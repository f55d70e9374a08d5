/** What other rooms may ask of a scan. */
export { type Hole, type LookedOver, lookOver } from './look-over.ts';
export { type Box, boxOf, type Mesh, triangleCount } from './mesh.ts';
export { type Datum, type LaidIn, laidIn } from './place-mesh.ts';
export { type MeshRead, readMesh } from './read-mesh.ts';
export { possibleUnits, SCAN_UNITS, type ScanUnit } from './unit.ts';
