/** Why nothing can be found: what is wrong with what was given, or why it cannot be as it is given. */
interface Props {
  readonly refused: readonly string[];
  readonly causes: readonly string[];
}

export function CannotBe({ refused, causes }: Props) {
  return (
    <>
      {refused.map((message) => (
        <p key={message} role="alert">
          {message}
        </p>
      ))}
      {causes.length > 0 && (
        <section role="status">
          <h3>It cannot be as it is given</h3>
          {causes.map((cause) => (
            <p key={cause} className="note">
              {cause}
            </p>
          ))}
        </section>
      )}
    </>
  );
}
