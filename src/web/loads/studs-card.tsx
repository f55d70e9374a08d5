/** One bolted joint: its face drawn with what is left on each pad, its figures, and a stud opened. */
import { useState } from 'react';
import { JOINT_NAMES, JOINT_WORDS, type JointReached } from '../../questions/index.ts';
import { JOINT_FIGURE } from '../slip/working-slip.tsx';
import { usePage } from '../state.tsx';
import { FigureRow } from '../stops/figure-row.tsx';
import { DoingChoice } from './doing-choice.tsx';
import { FaceDrawing } from './face-drawing.tsx';
import { JointToPrint } from './print-words.tsx';
import { Remarks } from './remarks.tsx';
import { useJoint } from './use-loads.ts';

export function StudsCard() {
  const { place, go } = usePage();
  const joint = useJoint(place.joint);
  return (
    <>
      <fieldset className="words card-words">
        <legend className="unseen">Which joint</legend>
        {JOINT_NAMES.map((name) => (
          <button
            key={name}
            type="button"
            aria-pressed={place.joint === name}
            onClick={() => go({ joint: name })}
          >
            {JOINT_WORDS[name]}
          </button>
        ))}
      </fieldset>
      <DoingChoice />
      {joint.reached ? <Told joint={joint} /> : <p role="status">{joint.message}</p>}
    </>
  );
}

function Told({ joint }: { joint: JointReached }) {
  const { go } = usePage();
  const working = (id: string) => () => go({ figure: `${JOINT_FIGURE}${id}` });
  const [opened, open] = useState<string>();
  const stud =
    joint.face.studs.find(({ name }) => name === opened) ??
    joint.face.studs.find(({ name }) => name === joint.worst)!;
  const prefix = `stud.${stud.name}.`;
  const whole = joint.figures.filter(({ id }) => !id.startsWith('stud.') && !id.startsWith('dowel.'));
  const own = joint.figures.filter(({ id }) => id.startsWith(prefix));
  const dowels = joint.figures.filter(({ id }) => id.startsWith('dowel.'));
  return (
    <>
      <FaceDrawing face={joint.face} chosen={stud.name} worst={joint.worst} onChoose={open} />
      <h3>
        {stud.name}
        {stud.name === joint.worst ? ': least is left here' : ''}
      </h3>
      <div className="figure-rows">
        {own.map((figure) => (
          <FigureRow
            key={figure.id}
            figure={{ ...figure, means: figure.means.slice(stud.name.length + 2) }}
            onOpen={working(figure.id)}
          />
        ))}
      </div>
      <h3>The face</h3>
      <div className="figure-rows">
        {[...whole, ...dowels].map((figure) => (
          <FigureRow key={figure.id} figure={figure} onOpen={working(figure.id)} />
        ))}
      </div>
      <JointToPrint />
      <Remarks notes={joint.notes} cautions={joint.cautions} />
    </>
  );
}
