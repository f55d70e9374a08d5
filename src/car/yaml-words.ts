/**
 * What is wrong with the writing of a YAML text, in the workshop's words.
 *
 * In    the parser's code of the error and the text from where it stands
 * Out   a sentence without its full stop, and what to do about it
 *
 * The parser's own words speak of its inner parts, which tells nobody what to mend; its codes are stable.
 */
import type { ErrorCode } from 'yaml';

export interface YamlWords {
  readonly message: string;
  readonly remedy: string;
}

const INDENT = 'YAML keeps its order by indentation with spaces; look at this line and the one above';
const QUOTE = 'Put the text in "quotes"';

const WORDS: Readonly<Partial<Record<ErrorCode, readonly [message: string, remedy: string]>>> = {
  ALIAS_PROPS: ['a name that begins with * cannot have an & or ! before it', QUOTE],
  BAD_ALIAS: ['a * must be followed by a name that an & gave before', QUOTE],
  BAD_DIRECTIVE: [
    'this line that begins with % is not understood',
    'A car file needs no such line: take it out',
  ],
  BAD_DQ_ESCAPE: [
    'a backslash within "quotes" has a meaning of its own, and this one has none',
    "Put the text in 'single quotes'",
  ],
  BAD_INDENT: ['the line is indented too little for what it belongs to, or a bracket is not closed', INDENT],
  BAD_SCALAR_START: ['text cannot begin with this sign', QUOTE],
  BLOCK_AS_IMPLICIT_KEY: [
    'there is a second colon where one key and its value should stand, or the line is indented wrongly',
    `${INDENT}; a text with a colon in it goes in "quotes"`,
  ],
  BLOCK_IN_FLOW: [
    'a list with dashes cannot stand within brackets',
    'Part what is within brackets by commas',
  ],
  KEY_OVER_1024_CHARS: ['a key is longer than any word', INDENT],
  MISSING_CHAR: ['a quote, a bracket, a comma or the colon behind a key is missing', INDENT],
  MULTILINE_IMPLICIT_KEY: ['a key goes over more than one line', INDENT],
  MULTIPLE_DOCS: [
    'a line of --- begins a second file within the file',
    'A car file is one: take the line out',
  ],
  TAB_AS_INDENT: ['the line is indented with a tab', 'Use spaces: YAML does not take tabs'],
  UNEXPECTED_TOKEN: ['there is something that does not belong here', INDENT],
};

/** @param from the text from the error on */
export function yamlWords(code: ErrorCode, from: string): YamlWords {
  if (code === 'DUPLICATE_KEY') {
    const key = /^["']?([^"':\n]{1,80}?)["']?\s*:/.exec(from)?.[1];
    return {
      message: key === undefined ? 'A key stands twice here' : `"${key}" stands twice here`,
      remedy: 'Keep one of the two: nobody can say which is meant.',
    };
  }
  const [message, remedy] = WORDS[code] ?? ['it is not written as YAML', INDENT];
  return { message: `The file cannot be read here: ${message}`, remedy: `${remedy}.` };
}

/** Why a text that is written well cannot be unfolded. */
export const unfoldingWords = (reason: unknown): string =>
  reason instanceof ReferenceError
    ? 'a name with * in front stands for nothing: no & gave it before'
    : 'what stands for something else by * and & comes to more than any car file holds';
