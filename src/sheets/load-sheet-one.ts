/**
 * The load sheet of one case: the four tyres, what each corner carries, the forces on the gear case and their resultant.
 *
 * In    the loads of all four wheels with spread, the forces on the case
 * Out   the laid-out document
 */
import type { BodyForcesReached } from '../questions/body-forces.ts';
import type { NamedDoing } from '../questions/doing-words.ts';
import { figureNamed, figuresAt, MEMBER_WORDS, MEMBERS } from '../questions/load-cases.ts';
import type { LoadsReached } from '../questions/loads.ts';
import { type Speech, spokenAmount } from '../units/show.ts';
import { SPREAD_WORDS } from './corner-sheet.ts';
import { borderOf, type SheetHead } from './frame.ts';
import { type Block, gap, heading, layOut, paragraph } from './lay-out.ts';
import { capital, figureWords, memberWords, SIGN_WORDS, WHEELS_ON_SHEET, wheelTitle } from './load-words.ts';
import { type SheetDocument, SIZE } from './page.ts';
import { type Column, type Row, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';

export interface LoadSheetMatter {
  readonly doing: NamedDoing;
  readonly loads: LoadsReached;
  /** Nothing where they have no answer. */
  readonly gearCase?: BodyForcesReached;
}

interface Sheet {
  readonly of: LoadSheetMatter;
  readonly speech: Speech;
  readonly width: number;
  readonly measure: TextMeasure;
}

export function oneCaseSheet(
  of: LoadSheetMatter,
  head: Omit<SheetHead, 'title' | 'of'>,
  measure: TextMeasure,
): SheetDocument {
  const width = borderOf(head.paper).width - 4;
  const sheet: Sheet = { of, speech: head.speech, width, measure };
  const small = (words: string): Block[] => paragraph(words, { width, size: SIZE.small }, measure);
  const blocks: Block[] = [
    ...paragraph(capital(of.doing.means), { width, size: SIZE.figure, weight: 'bold' }, measure),
    ...byWheel(sheet, 'At the ground', GROUND),
    ...byWheel(
      sheet,
      'Members: force along each',
      MEMBERS.map((name) => [`tension.${name}`, MEMBER_WORDS[name]] as const),
    ),
    ...byWheel(
      sheet,
      'Members: stress over yield',
      MEMBERS.map((name) => [`yieldShare.${name}`, MEMBER_WORDS[name]] as const),
    ),
    ...byWheel(
      sheet,
      'Members: push over the push at which it buckles',
      MEMBERS.map((name) => [`bucklingShare.${name}`, MEMBER_WORDS[name]] as const),
    ),
    ...byWheel(sheet, 'Upright, rocker, spring', REST),
    ...gearCase(sheet),
    heading('Notes'),
    ...[...of.loads.notes, ...(of.gearCase?.notes ?? []), SIGN_WORDS].flatMap(small),
    ...small(SPREAD_WORDS.replace('load-path.md', 'loads.md')),
  ];
  const full = { ...head, title: 'Load sheet', of: capital(of.doing.name.replaceAll('-', ' ')) };
  return layOut({ head: full, cautions: of.loads.cautions, blocks }, measure);
}

type Line = readonly [id: string, words: string];

const GROUND: readonly Line[] = [
  ['tyreLoad', 'load of the tyre on the ground'],
  ['tyreForward', 'force of the ground, forward'],
  ['tyreSide', 'force of the ground, to the left'],
  ['travelUnderLoad', 'travel of the wheel, bump positive'],
];

const REST: readonly Line[] = [
  ['upperBallJoint', 'upper outer joint'],
  ['lowerBallJoint', 'lower outer joint'],
  ['wishboneBending', 'bending of the wishbone with the rod'],
  ['rockerPivotForce', 'rocker pivot'],
  ['rockerCouple', 'couple that tips the rocker'],
  ['dropLinkForce', 'anti-roll bar drop link'],
  ['unitForceUnderLoad', 'spring unit, compression positive'],
  ['barTorqueUnderLoad', 'torque of the torsion bar'],
  ['barStressUnderLoad', 'shear stress of the torsion bar'],
];

const isAlong = (id: string): boolean => id.startsWith('tension.') || id === 'dropLinkForce';

/** A row a figure, a column a wheel; a figure that no wheel has is left out. */
function byWheel({ of, speech, width, measure }: Sheet, title: string, lines: readonly Line[]): Block[] {
  const columns: Column[] = [
    { title: '', part: 1.5 },
    ...WHEELS_ON_SHEET.map((wheel) => ({ title: wheelTitle(wheel), part: 1, align: 'right' as const })),
  ];
  const rows: Row[] = lines.flatMap(([id, words]) => {
    const cells = WHEELS_ON_SHEET.map((wheel) => {
      const figure = figureNamed(figuresAt(of.loads, wheel), id);
      if (figure === undefined) return '';
      return isAlong(id) ? memberWords(figure, speech) : figureWords(figure, speech);
    });
    return cells.every((cell) => cell === '') ? [] : [{ cells: [words, ...cells] }];
  });
  return rows.length === 0 ? [] : [heading(title), ...table(columns, rows, width, measure), gap(0.6)];
}

function gearCase({ of, speech, width, measure }: Sheet): Block[] {
  if (of.gearCase === undefined) return [];
  const { forces, resultant } = of.gearCase;
  const newtons = (value: number): string => spokenAmount(value, 'N', 0, speech);
  const couple = (value: number): string => (value === 0 ? '' : spokenAmount(value, 'N m', 1, speech));
  const columns: Column[] = [
    { title: 'On the gear case', part: 2.4 },
    ...['forward', 'to the left', 'up', 'together', 'couple'].map((title) => ({
      title,
      part: 1,
      align: 'right' as const,
    })),
  ];
  const rows: Row[] = [
    ...forces.map((each) => ({
      cells: [each.name, ...each.force.map(newtons), newtons(each.size), couple(each.moment)],
    })),
    {
      cells: ['all of them', ...resultant.force.map(newtons), newtons(Math.hypot(...resultant.force)), ''],
      bold: true,
    },
    {
      cells: ['their moment about the rear axle line on the ground', ...resultant.moment.map(couple), '', ''],
      bold: true,
    },
  ];
  return [heading('Forces on the gear case'), ...table(columns, rows, width, measure), gap(2)];
}
