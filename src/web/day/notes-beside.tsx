/** What must be said beside figures: notes, then cautions. */
export function NotesBeside({
  notes,
  cautions,
}: {
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}) {
  return (
    <>
      {notes.map((words) => (
        <p key={words} className="note">
          {words}
        </p>
      ))}
      {cautions.map((words) => (
        <p key={words} className="caution">
          <b>Caution.</b> {words}
        </p>
      ))}
    </>
  );
}
