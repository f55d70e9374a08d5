/** The scans that a car file names, as the workshop serves them. */
import { scanForms } from '../../questions/index.ts';
import { fetchScan } from '../client.ts';

/** By their names in the car file. */
export type ScanBytes = Readonly<Record<string, Uint8Array>>;

/** @throws NotServed where one is away */
export async function fetchScans(id: string, car: Parameters<typeof scanForms>[0]): Promise<ScanBytes> {
  const scans: Record<string, Uint8Array> = {};
  for (const [name, form] of Object.entries(scanForms(car))) scans[name] = await fetchScan(id, form.file);
  return scans;
}
