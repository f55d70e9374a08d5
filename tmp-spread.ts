import { readFileSync, writeFileSync } from 'node:fs';
import { openCar, standOnFloor } from './src/questions/index.ts';
const out: any = {};
for (const name of ['fenwold-201','ashgarth-501']) for (const bars of ['connected','disconnected'] as const) {
const files: any = {}; for (const f of ['arm-front.csv','arm-rear.csv']) try { files[f]=readFileSync(`cars/${name}/${f}`,'utf8'); } catch {}
const r = openCar({ text: readFileSync(`cars/${name}/car.yaml`,'utf8'), files });
if (!r.ok) throw new Error(JSON.stringify(r.problems));
const t=process.cpuUsage();
out[name+bars] = standOnFloor(r.car, {bars});
const u=process.cpuUsage(t); console.log(name,bars,(u.user+u.system)/1e3,'ms');
}
writeFileSync(process.argv[2]!, JSON.stringify(out));
