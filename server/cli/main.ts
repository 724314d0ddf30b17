// The command line: arguments → one command; its exit status. 0 fine; 1 findings at error level, or more warnings than
// allowed; 2 the command was misused or nothing could be read; 3 a fault of the program's own. Each command is loaded when
// it is asked for, so that the others cost nothing at start.
import process from 'node:process';
import { Command, CommanderError, Option } from 'commander';
import { isMisuse } from './faults.ts';
import { version } from './version.ts';

const program = new Command('screed')
  .description('Plans for building a small house, as readable text: quantities, dates, cost, and what is out of order.')
  .version(version, '-V, --version', 'print the version')
  .helpOption('-h, --help', 'print help')
  .helpCommand('help [command]', 'print help for a command')
  .exitOverride()
  .configureHelp({ sortOptions: false })
  .showSuggestionAfterError(true);

const PATH = 'a .screed file, a folder that holds one plan, or - for standard input';

common(
  program
    .command('check')
    .description('what is wrong, at risk or worth knowing in a plan, and when it is done and what it costs')
    .argument('[paths...]', '.screed files, folders, or - for standard input (default: this folder)'),
  ['text', 'json', 'sarif', 'github', 'junit'],
)
  .option('--max-warnings <number>', 'fail when there are more warnings than this')
  .option('--only <code...>', 'only findings of these codes, or of these areas (sequence, money …)')
  .option('--skip <code...>', 'no findings of these codes or areas')
  .option('--profile <who>', 'who reads: owner (all), builder (no notes of common practice), ci (errors and warnings)')
  .option('--baseline <file>', 'tell only what is not in this file (default: .screed-baseline.json beside the plan)')
  .option('--no-baseline', 'tell everything, whatever was known before')
  .option('--write-baseline <file>', 'write what is found now, so that from then on only what is new is told')
  .action(async (paths, options) => finish((await import('./check.ts')).check(paths, options)));

common(program.command('takeoff').description('how much of everything: net, needed, bought').argument('<path>', PATH), [
  'table',
  'json',
  'csv',
  'xlsx',
])
  .option('--by <what>', 'item, room, trade, element (of UNIFORMAT II) or part (of the house)', 'item')
  .action(async (path, options) => finish(await (await import('./tables.ts')).takeoff(path, options)));

common(
  program
    .command('buy')
    .description('what to buy, in packages, by supplier and delivery: weight, when it must be on site, order-by dates, cost')
    .argument('<path>', PATH),
  ['table', 'json', 'csv', 'xlsx'],
).action(async (path, options) => finish(await (await import('./tables.ts')).buy(path, options)));

common(
  program
    .command('layout')
    .description(
      'how goods are laid out and cut: concrete by pour and truck, lengths by stick, sheets and panels by wall, rolls, tile, and their waste',
    )
    .argument('<path>', PATH),
  ['table', 'json', 'csv'],
)
  .option('--prove', 'the least length of stock for each item, by an exact solver')
  .option('--seconds <number>', 'how long the solver may look for each item', '10')
  .action(async (path, options) => finish(await (await import('./tables.ts')).layout(path, options)));

common(
  program
    .command('schedule')
    .description('when each step begins and is done, and how many days it has to spare')
    .argument('<path>', PATH),
  ['table', 'json', 'csv'],
)
  .option('--trade <name>', 'only the steps of one trade')
  .option('--save <name>', 'keep the schedule as it is now, as text beside the plan, to compare with later')
  .option('--against [name]', 'how late each step is against a schedule that was kept, and why (default: the latest)')
  .option('--improve [schedules]', 'look for an order of work that is done sooner, trying so many schedules (default: 5000)')
  .option('--seed <number>', 'where chance begins: the same seed finds the same (default: 1)')
  .option('--prove', 'with --improve: ask an exact solver whether anything is better; small plans only')
  .action(async (path, options) => {
    if (options.improve === undefined && options.prove !== true) finish((await import('./tables.ts')).schedule(path, options));
    else finish(await (await import('./improve.ts')).improved(path, options));
  });

common(
  program
    .command('faster')
    .description('which steps are worth paying to do sooner ("faster by"), and the least price for each earlier end')
    .argument('<path>', PATH),
  ['table', 'json', 'csv'],
).action(async (path, options) => finish((await import('./faster.ts')).faster(path, options)));

common(
  program
    .command('look-ahead')
    .description('the next weeks by trade, and whom to call by when: to confirm, order, book, renew')
    .argument('<path>', PATH),
  ['table', 'text (messages to paste)', 'ics (calendar file; -o FOLDER/ writes one for each trade)', 'json', 'csv'],
)
  .option('--from <date>', 'the first day (default: the day the diary stands at, else the plan’s first)')
  .option('--weeks <number>', 'how many weeks', '3')
  .option('--trade <name>', 'only one trade')
  .option('--stamp <moment>', 'when a calendar file is said to be made, in universal time (default: now)')
  .action(async (path, options) => finish(await (await import('./look-ahead.ts')).printLookAhead(path, options)));

common(
  program
    .command('risk')
    .description('by when it is done with which chance, what a promised date needs, and which steps decide it')
    .argument('<path>', PATH),
  ['table', 'json', 'csv'],
)
  .option('--by <date>', 'the day to be done by (default: the plan’s target)')
  .option('--runs <number>', 'how often the plan is run', '10000')
  .option('--seed <number>', 'what the dice are thrown from: the same seed gives the same figures', '1')
  .option('--shape <shape>', 'how lengths scatter within their range: beta-pert or triangular', 'beta-pert')
  .action(async (path, options) => finish((await import('./risk.ts')).risk(path, options)));

common(
  program
    .command('board')
    .description('who is on site where, week by week, in plans that share trades; and who is asked for twice on one day')
    .argument('[paths...]', '.screed files or folders (default: this folder)'),
  ['table', 'json', 'csv'],
).action(async (paths, options) => finish((await import('./board.ts')).board(paths, options)));

common(program.command('cost').description('what it costs, by prices, bids and rates of the plan').argument('<path>', PATH), [
  'table',
  'json',
  'csv',
])
  .option('--by <what>', 'trade, task, room, element (of UNIFORMAT II) or part (of the house)', 'trade')
  .action(async (path, options) => finish((await import('./tables.ts')).cost(path, options)));

common(
  program
    .command('explain')
    .description('the working behind a number, a date or a sum, as a tree')
    .argument('<path>', PATH)
    .argument(
      '<name>',
      'a step, room, trade or anything else with a name or label; NAME.FACT; an item as it is printed; or the id of a quantity, such as "stud 2x4@main"',
    ),
  ['text', 'json'],
).action(async (path, name, options) => finish((await import('./explain.ts')).explain(path, name, options)));

program
  .command('rule')
  .description('what a finding means, where it comes from, and how to answer it')
  .argument(
    '[code]',
    'the code in brackets at the end of a finding, such as sequence/board-before-dry; or an area, such as sequence, for its codes (default: all)',
  )
  .option('-o, --output <file>', 'write to a file')
  .action(async (code, options) => finish((await import('./rule.ts')).rule(code, options)));

program
  .command('format')
  .description('the usual spacing and spelling; no letter of a plan is lost')
  .argument('<paths...>', '.screed files, folders, or - for standard input')
  .option('--check', 'change nothing; fail where something would change')
  .option('--quiet', 'no remarks')
  .action(async (paths, options) => finish((await import('./format.ts')).format(paths, options)));

program
  .command('server')
  .description('the language server, for editors')
  .option('--stdio', 'talk over standard input and output')
  .allowUnknownOption()
  .action(async () => (await import('./server.ts')).serve());

/** What `screed check` and its kin have in common. */
function common(command: Command, formats: readonly string[]): Command {
  return command
    .addOption(new Option('-f, --format <format>', `how to write it: ${formats.join(', ')}`))
    .option('--as-of <date>', 'the day to look from: the diary counts up to it (default: its latest block)')
    .option('-o, --output <file>', 'write to a file')
    .option('-q, --quiet', 'the result alone, without summary and remarks')
    .option('--color', 'in colour, whatever the output is')
    .option('--no-color', 'without colour');
}

function finish(status: number): void {
  process.exitCode = status;
}

/** Whoever reads the output may stop reading: no fault of anybody's. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit();
});

try {
  await program.parseAsync();
} catch (error) {
  finish(statusOf(error));
}

function statusOf(error: unknown): number {
  // Its own message has been printed: help and version are fine, the rest is misuse.
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  if (isMisuse(error)) {
    process.stderr.write(`screed: ${error.message}.\n`);
    return 2;
  }
  process.stderr.write(
    `screed: a fault of its own; please report it.\n${error instanceof Error ? error.stack : String(error)}\n`,
  );
  return 3;
}
