/**
 * The face of a joint seen from behind the car: each pad filled as far as it is still pressed at the low end of the
 * preload, dowels as crosses.
 */
import type { DrawnFace } from '../../questions/index.ts';
import { spokenAmount } from '../../units/show.ts';
import { usePage } from '../state.tsx';

interface Props {
  readonly face: DrawnFace;
  readonly chosen: string;
  readonly worst: string;
  /** Left out where no stud is to be opened. */
  readonly onChoose?: (name: string) => void;
}

/** Margin round the studs, mm: room for what stands under each. */
const ROOM = 105;
/** Letters, mm on the face: 17 px and more on a card 330 px wide. */
const LETTERS = 36;

export function FaceDrawing({ face, chosen, worst, onChoose }: Props) {
  const { speech } = usePage();
  // from behind, the car's left is at the left; up is up
  const across = (y: number): number => -y * 1000;
  const up = (z: number): number => -z * 1000;
  const xs = face.studs.map(({ y }) => across(y));
  const ys = face.studs.map(({ z }) => up(z));
  const [left, top] = [Math.min(...xs) - ROOM, Math.min(...ys) - ROOM];
  const [wide, high] = [Math.max(...xs) + ROOM - left, Math.max(...ys) + ROOM + 20 - top];
  return (
    <figure className="face">
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot stand in a drawing */}
      <svg viewBox={`${left} ${top} ${wide} ${high}`} role="group" aria-label="The face from behind the car">
        {face.dowels.map(({ name, y, z }) => (
          <path key={name} className="dowel" d={`M${across(y) - 9} ${up(z)}h18M${across(y)} ${up(z) - 9}v18`}>
            <title>{name}</title>
          </path>
        ))}
        {face.studs.map((stud) => {
          const share = Math.max(0, Math.min(1, stud.pressed === 0 ? 0 : stud.left / stud.pressed));
          const [x, y, r] = [across(stud.y), up(stud.z), stud.pad * 500];
          const words = spokenAmount(stud.left, 'N', 0, speech);
          return (
            // biome-ignore lint/a11y/noStaticElementInteractions: its role stands below, a button where it opens a stud
            <g
              key={stud.name}
              className="stud"
              {...(onChoose === undefined
                ? { role: 'img' }
                : { role: 'button', tabIndex: 0, 'aria-pressed': chosen === stud.name })}
              aria-label={`${stud.name}, ${words} left on its pad`}
              data-worst={stud.name === worst}
              onClick={() => onChoose?.(stud.name)}
              onKeyDown={(event) => {
                if (event.key !== 'Enter' && event.key !== ' ') return;
                event.preventDefault();
                onChoose?.(stud.name);
              }}
            >
              <circle className="reach" cx={x} cy={y} r={Math.max(r, 36)} />
              <circle className="pad" cx={x} cy={y} r={r} />
              <circle className="left" cx={x} cy={y} r={r * Math.sqrt(share)} />
              {stud.open.map((at) => (
                <circle
                  key={`${at.y} ${at.z}`}
                  className="open"
                  cx={across(at.y)}
                  cy={up(at.z)}
                  r={stud.pad * 36}
                />
              ))}
              <circle className="hole" cx={x} cy={y} r={stud.hole * 500} />
              <text x={x} y={y + r + LETTERS} fontSize={LETTERS} textAnchor="middle">
                {words}
              </text>
            </g>
          );
        })}
      </svg>
      <figcaption>
        From behind the car. Filled, and in figures: what is still pressed at the low end of the preload.
        {face.studs.some(({ open }) => open.length > 0) && ' Dots: where the face has opened.'} Crosses:
        dowels.
      </figcaption>
    </figure>
  );
}
