/**
 * The last few answers of something that takes its time and hangs on what is asked alone; the oldest goes.
 *
 * In    how many are kept, when two askings are the same, the work
 * Out   the same work, done once for askings that follow one another
 */
export function lately<K, A>(most: number, same: (a: K, b: K) => boolean, work: (asked: K) => A) {
  const kept: { readonly asked: K; readonly answer: A }[] = [];
  return (asked: K): A => {
    const at = kept.findIndex((each) => same(each.asked, asked));
    const known = at < 0 ? { asked, answer: work(asked) } : kept.splice(at, 1)[0]!;
    kept.unshift(known);
    kept.length = Math.min(kept.length, most);
    return known.answer;
  };
}
