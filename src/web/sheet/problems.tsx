/** What is wrong with a file, all at once, each with its place and what would do. */
import type { Problem } from '../engine/answers.ts';

export function Problems({ problems, text }: { problems: readonly Problem[]; text?: string }) {
  const lines = text?.split(/\r?\n/);
  return (
    <ol className="problems">
      {problems.map((problem, k) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the list is never put in another order, and may say a thing twice
        <li key={`${problem.code} ${problem.path} ${problem.line} ${k}`}>
          <p>{problem.message}</p>
          {problem.remedy && <p className="soft">{problem.remedy}</p>}
          {problem.line !== undefined && (
            <p className="soft">
              line {problem.line}
              {lines?.[problem.line - 1] !== undefined && (
                <code className="mono">{lines[problem.line - 1]!.trim().slice(0, 120)}</code>
              )}
            </p>
          )}
        </li>
      ))}
    </ol>
  );
}
