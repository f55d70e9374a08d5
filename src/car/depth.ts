/**
 * How deep a YAML text nests, found before it is parsed: a parser that goes down by calling itself has no bottom.
 *
 * In    the text of a file, of any kind
 * Out   the place where it nests deeper than any car file does, or nothing
 * Not   whether the text is YAML: the parser says
 *
 * Words in quotes, blocks of text and remarks are one piece each to the lexer, so what stands in them does not
 * count. The lexer itself goes along the text without going down.
 */
import { Lexer } from 'yaml';

/** A car file nests some ten deep. */
export const DEEPEST = 100;

export interface TooDeep {
  readonly line: number;
  readonly column: number;
}

export function tooDeep(text: string, deepest = DEEPEST): TooDeep | undefined {
  let brackets = 0;
  /** Indents of the blocks that are open, outermost first. */
  let blocks: number[] = [];
  let line = 1;
  let column = 1;
  let starting = true;
  const enter = (): void => {
    blocks = [...blocks.filter((indent) => indent < column), column];
  };
  for (const piece of new Lexer().lex(text)) {
    if (piece === '[' || piece === '{') brackets += 1;
    else if (piece === ']' || piece === '}') brackets = Math.max(0, brackets - 1);
    else if (brackets === 0 && isContent(piece)) {
      // `- - a` opens a block at each dash, `a:` one at its first letter
      if (starting || piece === '-' || piece === '?') enter();
      starting = piece === '-' || piece === '?';
    }
    if (brackets + blocks.length > deepest) return { line, column };
    const lastBreak = piece.lastIndexOf('\n');
    if (lastBreak >= 0) {
      line += piece.split('\n').length - 1;
      column = piece.length - lastBreak;
      starting = true;
    } else if (!isMark(piece)) column += piece.length;
  }
  return undefined;
}

/** Pieces that the lexer puts in and that do not stand in the text. */
const MARKS: ReadonlySet<string> = new Set(['\u0002', '\u0018', '\u001f', '\uFEFF']);
const isMark = (piece: string): boolean => MARKS.has(piece);

const isContent = (piece: string): boolean => !isMark(piece) && !/^(\s|#)/.test(piece);
