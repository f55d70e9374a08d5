/** The front share at which both axles ask alike over deceleration, and the share as the bar stands. */
import type { ToldFigure } from '../../questions/index.ts';
import { Chart } from '../stops/chart.tsx';

export function BiasChart({ figures }: { readonly figures: readonly ToldFigure[] }) {
  const alike = figures.filter(({ id }) => id === 'idealShare');
  const share = figures.find(({ of, id }) => of === 'car' && id === 'frontShare');
  if (alike.length < 2 || share === undefined) return null;
  const points = alike
    .map(({ of, value }) => [Number.parseFloat(of), 100 * value] as const)
    .sort(([a], [b]) => a - b);
  const set = 100 * share.value;
  return (
    <figure>
      <figcaption>
        Front share at which both axles ask alike over deceleration in g, and dashed the share as the bar
        stands, per cent. Where the dashed line is below, the rear locks first.
      </figcaption>
      <Chart
        told={`The share at which both axles ask alike goes from ${points[0]![1].toFixed(1)} to ${points.at(-1)![1].toFixed(1)} per cent; the bar stands at ${set.toFixed(1)} per cent`}
        across={points.map(([g]) => g)}
        acrossName="g"
        lines={[
          { name: 'alike', values: points.map(([, value]) => value) },
          { name: 'set', values: points.map(() => set), dashed: true, plain: true },
        ]}
      />
    </figure>
  );
}
