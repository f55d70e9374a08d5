/**
 * The command line: one command a question.
 *
 * In    what was typed
 * Out   the answer on the output, what is wrong on the error stream, and an exit code (src/cli/outcome.ts)
 */
import { Command, CommanderError } from 'commander';
import { problemText } from '../measured/problem.ts';
import { FolderError } from '../workshop/folder.ts';
import { VERSION } from '../workshop/home.ts';
import { complain, endWith, header, sayJson } from './command.ts';
import { asBuiltCommand } from './commands/as-built.ts';
import { axleCommand, carCommand } from './commands/axle.ts';
import { barForCoilCommand } from './commands/bar-for-coil.ts';
import { benchTestCommand } from './commands/bench-test.ts';
import { brakesCommand } from './commands/brakes.ts';
import { caseCommand } from './commands/case.ts';
import { casesCommand } from './commands/cases.ts';
import { checkCommand } from './commands/check.ts';
import { coilForBarCommand } from './commands/coil-for-bar.ts';
import { compareCommand } from './commands/compare.ts';
import { cornerCommand } from './commands/corner.ts';
import { curvesCommand } from './commands/curves.ts';
import { cutsCommand } from './commands/cuts.ts';
import { demoCommand } from './commands/demo.ts';
import { figuresCommand } from './commands/figures.ts';
import { adjustersCommand, floorCommand } from './commands/floor.ts';
import { followCommand } from './commands/follow.ts';
import { fuelCommand } from './commands/fuel.ts';
import { ladderCommand } from './commands/ladder.ts';
import { loadsCommand } from './commands/loads.ts';
import { logCommand } from './commands/log.ts';
import { levelsCommand, scalesCommand } from './commands/pads.ts';
import { pressuresCommand } from './commands/pressures.ts';
import { primariesCommand } from './commands/primaries.ts';
import { ratiosCommand } from './commands/ratios.ts';
import { routeCommand } from './commands/route.ts';
import { scanCommand } from './commands/scan.ts';
import { schemaCommand } from './commands/schema.ts';
import { serveCommand } from './commands/serve.ts';
import { setUpCommand } from './commands/set-up.ts';
import { sheetCommand } from './commands/sheet.ts';
import { solidsCommand } from './commands/solids.ts';
import { bumpSteerCommand, stringsCommand } from './commands/strings.ts';
import { studsCommand } from './commands/studs.ts';
import { surveyCommand } from './commands/survey.ts';
import { tighteningCommand } from './commands/tightening.ts';
import { tubCommand } from './commands/tub.ts';
import { heightsCommand, transferCommand } from './commands/under-way.ts';
import { weighingCommand } from './commands/weighing.ts';
import { workingCommand } from './commands/working.ts';
import { wrapsCommand } from './commands/wraps.ts';
import { BadInput, badAsk, EXIT, EXIT_HELP, NotReached } from './outcome.ts';

function program(): Command {
  const made = new Command('flatpatch')
    .description('Works a retired formula-type single-seater from one file of measured points.')
    .version(VERSION, '-V, --version', 'the version')
    .helpOption('-h, --help', 'this help')
    .helpCommand('help [command]', 'help of a command')
    .exitOverride()
    .configureOutput({ writeErr: () => undefined })
    .addHelpText(
      'after',
      `\nEach command has its own help with examples: flatpatch help corner\n\n${EXIT_HELP}`,
    );
  const commands = [
    cornerCommand(),
    axleCommand(),
    carCommand(),
    figuresCommand(),
    curvesCommand(),
    workingCommand(),
    compareCommand(),
    loadsCommand(),
    followCommand(),
    casesCommand(),
    logCommand(),
    caseCommand(),
    tubCommand(),
    studsCommand(),
    tighteningCommand(),
    scanCommand(),
    primariesCommand(),
    cutsCommand(),
    wrapsCommand(),
    solidsCommand(),
    asBuiltCommand(),
    transferCommand(),
    heightsCommand(),
    pressuresCommand(),
    ratiosCommand(),
    brakesCommand(),
    fuelCommand(),
    barForCoilCommand(),
    coilForBarCommand(),
    ladderCommand(),
    benchTestCommand(),
    floorCommand(),
    adjustersCommand(),
    setUpCommand(),
    weighingCommand(),
    stringsCommand(),
    bumpSteerCommand(),
    scalesCommand(),
    levelsCommand(),
    surveyCommand(),
    routeCommand(),
    checkCommand(),
    sheetCommand(),
    schemaCommand(),
    demoCommand(),
    serveCommand(),
  ];
  for (const each of commands) made.addCommand(each);
  return made;
}

/** Runs one command. Never throws for bad input; the process ends with the exit code that is set. */
export async function main(args: readonly string[]): Promise<void> {
  // a reader that has seen enough (head, less) is no mistake of anybody's
  process.stdout.on('error', (reason: NodeJS.ErrnoException) => {
    if (reason.code === 'EPIPE') process.exit(EXIT.answered);
    complain(`The answer could not be written: ${unwrittenWords(reason)}.`);
    process.exit(EXIT.notWritten);
  });
  // nobody is left to be told
  process.stderr.on('error', () => process.exit(EXIT.notWritten));
  const asked = program();
  try {
    if (args.length === 0)
      throw badAsk('asked/nothing', 'What is to be worked out?', 'flatpatch --help names the commands.');
    await asked.parseAsync(args, { from: 'user' });
  } catch (reason) {
    fail(reason, args.includes('--json'));
  }
}

const unwrittenWords = ({ code, message }: NodeJS.ErrnoException): string =>
  code === 'ENOSPC' ? 'the disk is full' : code === 'EIO' ? 'the device does not answer' : message;

function fail(reason: unknown, json: boolean): void {
  if (reason instanceof CommanderError) {
    // help and version come this way too, and are answers
    if (reason.exitCode === 0) return;
    const message = reason.message.replace(/^error: /, '');
    fail(
      badAsk(
        'asked/form',
        `${message.slice(0, 1).toUpperCase()}${message.slice(1)}`.replace(/(?<![.?)])$/, '.'),
        'flatpatch help shows how it is asked.',
      ),
      json,
    );
    return;
  }
  if (reason instanceof FolderError) {
    fail(new BadInput([reason.problem]), json);
    return;
  }
  if (reason instanceof BadInput) {
    for (const problem of reason.problems) complain(problemText(problem));
    if (json) sayJson({ ...header('problems'), problems: [...reason.problems] });
    endWith(EXIT.badInput);
    return;
  }
  if (reason instanceof NotReached) {
    complain(reason.message);
    if (json) sayJson({ ...header('none'), message: reason.message });
    endWith(EXIT.notReached);
    return;
  }
  complain('The program made a mistake. Please report it with what was asked and the lines below.');
  complain(reason instanceof Error ? (reason.stack ?? reason.message) : String(reason));
  endWith(EXIT.ourMistake);
}
