/** One joint in two specs: its faces one above the other, and what is left and breaks first in each, in words. */
import type { JointReached } from '../../questions/index.ts';
import { FaceDrawing } from '../loads/face-drawing.tsx';

export interface JointOfSpec {
  readonly spec: string;
  readonly joint: JointReached;
}

export function TwoJoints({ of }: { of: readonly JointOfSpec[] }) {
  return (
    <>
      {of.map(({ spec, joint }) => (
        <section key={spec} className="joint-of-spec" aria-label={spec}>
          <h3>{spec}</h3>
          <FaceDrawing face={joint.face} chosen={joint.worst} worst={joint.worst} />
          <p>{joint.left}</p>
          {joint.breaksFirst.map((words) => (
            <p key={words}>{words}</p>
          ))}
        </section>
      ))}
    </>
  );
}
