/** The scans that a car file names, read from beside it. */
import { FolderError, readScan } from '../workshop/folder.ts';
import type { FoundCar } from './car-argument.ts';

/** The bytes of a scan, or undefined where it is not there: the question tells that in its own words. */
export async function scanBytes(
  { place }: Pick<FoundCar, 'place'>,
  file: string,
  besides: string | undefined,
): Promise<Uint8Array | undefined> {
  const folder = place?.folder ?? besides;
  if (folder === undefined) return undefined;
  try {
    return await readScan(folder, file);
  } catch (reason) {
    if (reason instanceof FolderError && reason.problem.code === 'file/not-there') return undefined;
    throw reason;
  }
}
