/** A line as typed into a shell, as its words where it is words alone. */

/** A word as it stands or in double quotes that hold nothing a shell would look into; a remark may end the line. */
const WORD = /(?:"([^"$`\\!]*)"|([^\s"'$`\\!*?[\]{}()<>|&;~#]+))(?=\s|$)/y;
const BETWEEN = /\s+#.*$|\s+/y;

/** The words; undefined where the line has a sign that a shell would act on. */
export function lineWords(line: string): readonly string[] | undefined {
  const words: string[] = [];
  let at = 0;
  const next = (pattern: RegExp): RegExpExecArray | null => {
    pattern.lastIndex = at;
    const found = pattern.exec(line);
    if (found !== null) at = pattern.lastIndex;
    return found;
  };
  while (at < line.length) {
    const word = next(WORD);
    if (word === null) return undefined;
    words.push(word[1] ?? word[2]!);
    if (at < line.length && next(BETWEEN) === null) return undefined;
  }
  return words;
}
