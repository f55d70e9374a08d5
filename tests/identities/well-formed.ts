import assert from 'node:assert/strict';

/** Every tag of a piece of MathML closes in its order, and nothing but known entities stands between. */
export function tagsClose(text: string): void {
  const open: string[] = [];
  for (const [, close, name] of text.matchAll(/<(\/?)([a-z]+)>/g)) {
    if (close === '') open.push(name!);
    else assert.equal(open.pop(), name, text);
  }
  assert.deepEqual(open, [], text);
  const between = text.replace(/<\/?[a-z]+>/g, '');
  assert.ok(!/[<>]/.test(between), text);
  assert.ok(!/&(?!amp;|lt;|gt;)/.test(between), text);
}
