/**
 * Slips in the collectors of a bank: none told, cylinders in none or in two of them, an axis without direction, a ring
 * on which the tubes cut into each other, secondaries that begin nowhere, cylinders that do not feed one evenly.
 */
import { distance } from '../maths/vec3.ts';
import type { Problem } from '../measured/problem.ts';
import type { BankForm, BankName, ExhaustForm } from './check-exhaust.ts';
import { firesEvenly, firingGaps, splits } from './firing.ts';

type CollectorForm = NonNullable<BankForm['collector']>;

/** Shortest distance between the two points that tell a direction. */
const LEAST_REACH = 0.02;

const tell = (
  code: string,
  path: string,
  message: string,
  remedy: string,
  weight: Problem['weight'] = 'error',
): Problem => ({ code: `exhaust/${code}`, path: `exhaust.${path}`, message, remedy, weight });

export function checkCollectors(
  side: BankName,
  { cylinders, collector, collectors, secondaries, tail }: BankForm,
  { tube, firing }: ExhaustForm,
): readonly Problem[] {
  // a collector takes the last of the tubes
  const od = (tube.steps?.at(-1)?.outside ?? tube.outside).value;
  const whose = `${side} bank`;
  const problems: Problem[] = [];
  if (collector === undefined && collectors === undefined) {
    problems.push(
      tell(
        'no-collector',
        side,
        `The ${whose} has no collector.`,
        'Write collector, or collectors where it has several.',
      ),
    );
  }
  if (collector !== undefined && collectors !== undefined) {
    problems.push(
      tell(
        'collector-or-collectors',
        `${side}.collectors`,
        `The ${whose} has both collector and collectors.`,
        'Write one of them; in the changes of a spec, collector: null takes the one away.',
      ),
    );
  }
  if (collector !== undefined) {
    problems.push(
      ...checkCollector(`${side}.collector`, `the ${side} collector`, collector, cylinders.length, od),
    );
  }
  for (const [k, each] of (collectors ?? []).entries()) {
    const path = `${side}.collectors.${k}`;
    const name = `collector ${each.cylinders.join('+')}`;
    problems.push(...checkCollector(path, name, each, each.cylinders.length, od));
    if (secondaries !== undefined && each.length === undefined) {
      problems.push(
        tell(
          'collector-length',
          `${path}.length`,
          `A secondary begins at the outlet of ${name}, and the length of that collector is not told.`,
          'Measure it from mouth to outlet and write length.',
        ),
      );
    }
  }
  if (tail !== undefined) problems.push(...checkTail(side, { collector, collectors, secondaries, tail }));
  if (collectors !== undefined) problems.push(...checkShares(side, cylinders, collectors, firing));
  if (secondaries !== undefined) {
    if (collectors === undefined) {
      problems.push(
        tell(
          'secondaries-from',
          `${side}.secondaries`,
          `The ${whose} has secondaries and one collector: they begin at none.`,
          'Write the collectors at which they begin under collectors.',
        ),
      );
    }
    problems.push(
      ...checkCollector(
        `${side}.secondaries.collector`,
        `the last collector of the ${whose}`,
        secondaries.collector,
        collectors?.length ?? 2,
        secondaries.tube.outside.value,
      ),
    );
  }
  return problems;
}

/** It begins at the one collector that is last, at the outlet of which something must be known, and ends somewhere. */
function checkTail(
  side: BankName,
  of: Pick<BankForm, 'collector' | 'collectors' | 'secondaries'> & { tail: NonNullable<BankForm['tail']> },
): readonly Problem[] {
  const { collector, collectors, secondaries, tail } = of;
  const problems: Problem[] = [];
  const last = secondaries?.collector ?? collector;
  const at = secondaries === undefined ? 'collector' : 'secondaries.collector';
  if (last === undefined && collectors !== undefined) {
    problems.push(
      tell(
        'tail-from',
        `${side}.tail`,
        `The ${side} bank has ${collectors.length} collectors and nothing that brings them together: its tail pipe begins at none.`,
        'Write the secondaries between them, or take the tail away.',
      ),
    );
  } else if (last !== undefined && last.length === undefined) {
    problems.push(
      tell(
        'collector-length',
        `${side}.${at}.length`,
        'The tail pipe begins at the outlet of the last collector, and the length of that collector is not told.',
        'Measure it from mouth to outlet and write length.',
      ),
    );
  }
  const apart = distance(tail.end.value, tail.beyond.value);
  if (apart < LEAST_REACH) {
    problems.push(
      tell(
        'tail-direction',
        `${side}.tail.beyond`,
        `The two points at the end of the ${side} tail pipe are ${mm(apart)} apart.`,
        'Take the second farther behind the end.',
      ),
    );
  }
  return problems;
}

function checkCollector(
  path: string,
  name: string,
  { mouth, downstream, ring, rows }: CollectorForm,
  tubes: number,
  od: number,
): Problem[] {
  const problems: Problem[] = [];
  const apart = distance(mouth.value, downstream.value);
  if (apart < LEAST_REACH) {
    problems.push(
      tell(
        'collector-direction',
        `${path}.downstream`,
        `The two points of the axis of ${name} are ${mm(apart)} apart.`,
        'Take the second farther down the tail pipe.',
      ),
    );
  }
  problems.push(...checkRows(path, name, { rows, ring }, tubes, od));
  const least = od / 2 / Math.sin(Math.PI / tubes);
  if (ring !== undefined && ring.value < least * (1 - 1e-6)) {
    problems.push(
      tell(
        'ring-small',
        `${path}.ring`,
        `On a ring of radius ${mm(ring.value)} ${tubes} tubes of ${mm(od)} cut into one another.`,
        `They touch at ${mm(least)}.`,
      ),
    );
  }
  return problems;
}

function checkRows(
  path: string,
  name: string,
  { rows, ring }: Pick<CollectorForm, 'rows' | 'ring'>,
  tubes: number,
  outside: number,
): Problem[] {
  if (rows === undefined) return [];
  const at = `${path}.rows`;
  const sum = rows.counts.reduce((a, b) => a + b, 0);
  return [
    ...(ring === undefined
      ? []
      : [
          tell(
            'rows-and-ring',
            at,
            `${capital(name)} has rows of inlets and the radius of a ring.`,
            'Keep the one that it has.',
          ),
        ]),
    ...(sum >= tubes
      ? []
      : [
          tell(
            'rows-count',
            `${at}.counts`,
            `The rows of ${name} hold ${sum} inlets for ${tubes} pipes.`,
            'Each pipe needs one.',
          ),
        ]),
    ...(rows.pitch.value >= outside * (1 - 1e-6)
      ? []
      : [
          tell(
            'rows-near',
            `${at}.pitch`,
            `At a pitch of ${mm(rows.pitch.value)} tubes of ${mm(outside)} cut into one another.`,
            'Middle to middle is wanted.',
          ),
        ]),
  ];
}

/** Each cylinder of the bank goes into one collector, and each collector is fed evenly. */
function checkShares(
  side: BankName,
  cylinders: readonly number[],
  collectors: NonNullable<BankForm['collectors']>,
  firing: readonly number[],
): Problem[] {
  const problems: Problem[] = [];
  const names = new Map<string, number>();
  const taken = new Map<number, number>();
  collectors.forEach(({ name, cylinders: own }, k) => {
    const called = name ?? own.join('+');
    const path = `${side}.collectors.${k}`;
    if (names.has(called)) {
      problems.push(
        tell(
          'collector-name',
          `${path}.name`,
          `Two collectors of the ${side} bank are called "${called}".`,
          'Give each its own name.',
        ),
      );
    }
    names.set(called, k);
    own.forEach((cylinder, j) => {
      const at = `${path}.cylinders.${j}`;
      if (!cylinders.includes(cylinder)) {
        problems.push(
          tell(
            'collector-cylinder',
            at,
            `Cylinder ${cylinder} is not of the ${side} bank, which has ${cylinders.join(', ')}.`,
            'Write the cylinders of this bank.',
          ),
        );
      } else if (taken.has(cylinder)) {
        problems.push(
          tell(
            'collector-cylinder',
            at,
            `Cylinder ${cylinder} goes into two collectors of the ${side} bank.`,
            'Write it in one of them.',
          ),
        );
      }
      taken.set(cylinder, k);
    });
  });
  const left = cylinders.filter((each) => !taken.has(each));
  if (left.length > 0) {
    problems.push(
      tell(
        'collector-cylinder',
        `${side}.collectors`,
        `${left.length === 1 ? `Cylinder ${left[0]} goes` : `Cylinders ${left.join(', ')} go`} into no collector of the ${side} bank.`,
        'Write each cylinder of the bank in one of its collectors.',
      ),
    );
  }
  if (problems.length > 0 || !cylinders.every((each) => firing.includes(each))) return problems;
  const even = splits(
    cylinders,
    collectors.map((each) => each.cylinders.length),
  ).find((groups) => groups.every((group) => firesEvenly(firing, group)));
  return collectors.flatMap(({ cylinders: own }, k) => {
    if (firesEvenly(firing, own)) return [];
    const asked = Number((720 / own.length).toFixed(1));
    const gaps = firingGaps(firing, own).map((gap) => Number(gap.toFixed(1)));
    return [
      tell(
        'collector-uneven',
        `${side}.collectors.${k}.cylinders`,
        `Cylinders ${own.join(', ')} fire ${gaps.join(', ')} degrees of crank apart, if the engine fires evenly; into one collector ${asked} is usual.`,
        even === undefined
          ? 'No sharing out of this bank fires evenly into collectors of these sizes.'
          : `These would be even: ${even.map((group) => group.join(' and ')).join('; ')}.`,
        'warning',
      ),
    ];
  });
}

const mm = (metres: number): string => `${Number((1000 * metres).toFixed(1))} mm`;

const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
