/** Saves a car file again and again until it is killed; kill.test.ts does that. */
import { join } from 'node:path';
import { carText } from '../../src/workshop/folder.ts';
import { saveChanges } from '../../src/workshop/save.ts';

const home = process.argv[2]!;
for (let number = 1; ; number += 1) {
  const { version } = await carText(home, 'one');
  const saved = await saveChanges({
    folder: join(home, 'one'),
    name: 'car.yaml',
    version,
    changes: [{ path: ['car', 'name'], value: `Name ${number}` }],
  });
  if (saved.kind !== 'saved') throw new Error(JSON.stringify(saved).slice(0, 500));
  if (number === 1) process.stdout.write('saving\n');
}
