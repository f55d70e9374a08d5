/**
 * A set of pipes as files of solids.
 *
 * In    pipes without faults, the date
 * Out   STEP with one named solid a pipe, STL and GLB of the same
 */
import type { Pipe } from '../gaspath/pipework/index.ts';
import { glbOf } from './glb.ts';
import { openKernel } from './kernel.ts';

const nameOf = (pipe: Pipe): string => `primary ${pipe.name}`;

async function solidsOf(pipes: readonly Pipe[]) {
  const kernel = await openKernel();
  return { kernel, solids: pipes.map((pipe) => ({ name: nameOf(pipe), solid: kernel.pipe(pipe) })) };
}

/** STEP (ISO 10303-21, application protocol 242), millimetres. */
export async function stepOf(pipes: readonly Pipe[], date: string): Promise<string> {
  const { kernel, solids } = await solidsOf(pipes);
  return kernel.step(solids, date);
}

/** Binary STL, millimetres. */
export async function stlOf(pipes: readonly Pipe[]): Promise<Uint8Array> {
  const { kernel, solids } = await solidsOf(pipes);
  return kernel.stl(solids);
}

/** Binary glTF, metres, y upwards. */
export async function glbOfPipes(pipes: readonly Pipe[]): Promise<Uint8Array> {
  const { kernel, solids } = await solidsOf(pipes);
  return glbOf(solids.map(({ name, solid }) => ({ name, skin: kernel.skin(solid) })));
}
