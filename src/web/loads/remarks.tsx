/** Notes and cautions at the foot of a card. */
export function Remarks({ notes, cautions }: { notes: readonly string[]; cautions: readonly string[] }) {
  return (
    <>
      {notes.map((note) => (
        <p key={note} className="note">
          {note}
        </p>
      ))}
      {cautions.map((caution) => (
        <p key={caution} className="caution">
          <b>Caution.</b> {caution}
        </p>
      ))}
    </>
  );
}
