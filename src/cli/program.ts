import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { bid, BID_FORMATS, type BidOptions } from './commands/bid.ts';
import { cutList, LIST_FORMATS, type ListOptions } from './commands/lists.ts';
import { boards, order, type BoardsOptions, type LeftoversOptions } from './commands/boards.ts';
import { check, CHECK_FORMATS, type CheckOptions } from './commands/check.ts';
import { changeOrder, ORDER_FORMATS, type ChangeOrderOptions } from './commands/change-order.ts';
import { CHANGE_FORMATS, compare, type CompareOptions } from './commands/compare.ts';
import { draw, DRAWING_FORMATS, THEMES, type DrawOptions } from './commands/draw.ts';
import { estimate, type EstimateOptions } from './commands/estimate.ts';
import { dryFit, FIT_FORMATS, type FitOptions } from './commands/dry-fit.ts';
import { told } from './commands/leaves.ts';
import { orTemplates, type TemplateOptions } from './commands/templates.ts';
import { explain } from './commands/explain.ts';
import { format, type FormatOptions } from './commands/format.ts';
import { invoice, INVOICE_FORMATS, type InvoiceOptions } from './commands/invoice.ts';
import { model, MODEL_FORMATS, type ModelOptions } from './commands/model.ts';
import { PAGE_FORMATS, print, PRINTED_PAGES, type PrintOptions } from './commands/print.ts';
import { suggest } from './commands/suggest.ts';
import { LABEL_PAPERS, labels, saw, type LabelOptions, type SawOptions } from './commands/saw.ts';
import { EXIT, UsageError, type ExitCode } from './exit-code.ts';
import type { World } from './world.ts';
import { codeOfStop } from './interrupts.ts';
import { rehearsing, type Performance } from './rehearsal.ts';
import { complain, type ColorChoice } from './terminal.ts';
import { terminalLines } from '../text/terminal.ts';
import { version } from './version.ts';

interface Surroundings extends Omit<World, 'terminal'> {
    openTerminal(color: ColorChoice): World['terminal'];
    /** Told what the command would do if it were stopped now, again and again while it looks for cheaper boards. */
    readonly ready?: (performance: Performance) => void;
    /** Becomes the language server; loads it only then. */
    serveEditor(): Promise<ExitCode>;
}

const ABOUT = 'Coffered ceilings of box beams, written as text: what does not fit, every piece, every board, every drawing.';
const NOTES = `
Files are .coffer files or folders of them; - is standard input; without any, the current folder is read.

Exit codes: 0 nothing wrong, 1 something found or a list incomplete, 2 wrong use or a file that cannot be read or written, 101 a mistake in this program;
stopped by Ctrl+C 130, by another program 143.

It computes and draws; it does not judge whether a ceiling is safe. Local codes and licensed people come first.`;

/** Runs the program as it was called and says how it went. Everything it reads and writes goes through `world`. */
export async function run(argv: readonly string[], world: Surroundings): Promise<ExitCode> {
    let code: ExitCode = EXIT.clean;
    const terminal = (): World['terminal'] => world.openTerminal(program.opts<{ color: ColorChoice }>().color);
    const program = command(world, async job => { code = await job(terminal()); });
    try {
        await program.parseAsync([...argv], { from: 'user' });
        return codeOfStop(world.stopped) ?? code;
    } catch (error) {
        if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.clean : EXIT.usage;
        if (!(error instanceof UsageError)) throw error;
        complain(error, terminal());
        return EXIT.usage;
    }
}

type Job = (terminal: World['terminal']) => ExitCode | Promise<ExitCode>;

function command(world: Surroundings, run: (job: Job) => Promise<void>): Command {
    const program = new Command('cofferwright')
        .description(ABOUT).version(version, '-V, --version').addHelpText('after', NOTES)
        .addOption(new Option('--color <when>', 'color the output').choices(['auto', 'always', 'never']).default('auto'))
        .showHelpAfterError('(see --help)').exitOverride()
        .configureOutput({ writeOut: text => { world.openTerminal('never').result(terminalLines(text.trimEnd().split('\n'))); }, writeErr: text => { text.trimEnd().split('\n').forEach(line => world.openTerminal('never').say(line)); } });
    const withFiles = (name: string, about: string): Command => program.command(name).description(about)
        .argument('[files...]', 'files or folders; - is standard input')
        .option('--stdin-file-path <path>', 'the path that the text on standard input counts as');
    const rooms = new Option('--room <name>', 'only this room; repeat it for more rooms').argParser((name: string, before: string[]) => [...before, name]).default([], 'all');
    const alternates = new Option('--with <alternate>', 'only this alternate; repeat it to combine alternates').argParser((name: string, before: string[]) => [...before, name]).default([], 'each by itself');
    const lists = new Option('--format <format>', 'output format').choices(LIST_FORMATS).default('human');
    const force = new Option('--force', 'also replace files that this program did not make, or that were changed since').default(false);
    const into = (usual?: string): Option => new Option('--out <folder>', 'the folder to write to').argParser(folder).default(usual);
    const act = <Options>(job: (options: Options & { files: string[] }, world: World) => ExitCode | Promise<ExitCode>) =>
        (files: string[], options: Options) =>
            run(terminal => rehearsing({ ...world, terminal }, world.ready, live => job({ ...options, files }, live)));

    withFiles('check', 'report what does not fit')
        .addOption(new Option('--format <format>', 'output format').choices(CHECK_FORMATS).default('human'))
        .addOption(new Option('--fail-on <severity>', 'the mildest finding that makes the exit code 1').choices(['error', 'warning', 'hint']).default('warning'))
        .option('--exit-zero', 'exit with 0 whatever is found', false)
        .option('--watch', 'keep running, and check again after every change', false)
        .action(act<CheckOptions>(check));
    withFiles('cut-list', 'every piece, for the saw').addOption(lists).addOption(rooms).action(act<ListOptions>(cutList));
    withFiles('measure', 'how every dimension is known, and what is still to measure, in the order in which one walks round the room').addOption(lists).addOption(rooms)
        .action(act<ListOptions>(told('measure')));
    withFiles('bench', 'boards as they were measured: which pieces they spoil, where they may still go, what is cut again; and cutters that creep').addOption(lists).addOption(rooms)
        .action(act<ListOptions>(told('bench')));
    withFiles('walls', 'what walls that are not straight or not plumb do to band, half beams and what ends there: scribe, gap, what is cut shorter').addOption(lists).addOption(rooms)
        .option('--templates [folder]', 'instead, draw what is scribed at true size, for printing, into this folder or that of --out; default: templates', folder).addOption(into()).addOption(force)
        .action(act<TemplateOptions>(orTemplates('walls')));
    withFiles('joists', 'what holds each beam: the joists that its blocking finds, screws, thread in wood, and what hangs there').addOption(lists).addOption(rooms)
        .action(act<ListOptions>(told('joists')));
    withFiles('trades', 'a list for the other trades: who moves what, to where, by which step').addOption(lists).addOption(rooms).action(act<ListOptions>(told('trades')));
    withFiles('seasons', 'what a year does to the joints, how wet the boards may be when they go up, and what to tell the owner').addOption(lists).addOption(rooms)
        .action(act<ListOptions>(told('seasons')));
    withFiles('survey', 'what the surveyed ceiling leaves of each side: the gap, what trim and blocking lap, what is scribed and shimmed').addOption(lists).addOption(rooms)
        .option('--templates [folder]', 'instead, draw what is scribed at true size, for printing, into this folder or that of --out; default: templates', folder).addOption(into()).addOption(force)
        .action(act<TemplateOptions>(orTemplates('survey')));
    withFiles('suggest', 'other grids for each room, with nothing of it in their way, the best first, with the words to write').addOption(lists).addOption(rooms)
        .action(act<ListOptions>(suggest));
    withFiles('put-up', 'what goes up when: the steps, the way of every piece to its place, the first bay and what is measured there').addOption(lists).addOption(rooms)
        .action(act<ListOptions>(told('put-up')));
    const quick = new Option('--quick', 'take the first plan; do not search for cheaper boards').default(false);
    const withBoards = (name: string, about: string): Command => withFiles(name, about).addOption(lists).addOption(rooms).addOption(quick);
    withBoards('boards', 'what to buy, what to cut from each board, and what is left')
        .option('--leftovers', 'print what is left instead, as lines for the stocks of the next job', false).action(act<LeftoversOptions>(boards));
    withBoards('order', 'what to order from whom: lengths, counts, board feet, prices, lead times').action(act<BoardsOptions>(order));
    withFiles('dry-fit', 'put the pieces of the cut list together and report what does not fit').addOption(new Option('--format <format>', 'output format').choices(FIT_FORMATS).default('human'))
        .addOption(rooms).action(act<FitOptions>(dryFit));
    withBoards('saw', 'the boards in the order of the saw: fences, stops, miters, machining; every cut mark')
        .option('--sheets [folder]', 'instead, draw the boards as they lie at the saw, for printing, into this folder or that of --out; default: sheets', folder).addOption(into()).addOption(force)
        .action(act<SawOptions>(saw));
    withFiles('labels', 'a label for every piece, and one for each bundle of spacers cut alike, in the order of the saw, as SVG and HTML to be printed').addOption(rooms).addOption(quick)
        .addOption(into('labels')).addOption(force).addOption(new Option('--paper <paper>', 'default: letter, or A4 where the job is in millimeters').choices(LABEL_PAPERS))
        .action(act<LabelOptions>(labels));
    withFiles('estimate', 'what the job costs and is sold for, with every alternate beside it').addOption(lists).addOption(rooms)
        .addOption(alternates).addOption(quick).action(act<EstimateOptions>(estimate));
    withFiles('bid', 'the client\'s page: what is done, for how much, on which terms').addOption(rooms).addOption(alternates).addOption(quick)
        .addOption(into('bids')).addOption(force).addOption(new Option('--format <format>', 'output format').choices(BID_FORMATS).default('pdf'))
        .option('--date <date>', 'the date on it; without one there is a line to fill in').action(act<BidOptions>(bid));
    withFiles('invoice', 'the bill by the contract of the job: what is done, less retainage and what is paid')
        .requiredOption('--number <number>', 'its number', filled).option('--final', 'all of the work is done: what was retained is asked for too', false).option('--date <date>', 'the date on it; without one there is a line to fill in')
        .addOption(into('invoices')).addOption(force).addOption(new Option('--format <format>', 'pdf and html are files, the others are printed').choices(INVOICE_FORMATS).default('pdf'))
        .action(act<InvoiceOptions>(invoice));
    withFiles('draw', 'plan and sections as SVG files, or as DXF files at true size')
        .addOption(into('drawings')).addOption(force)
        .addOption(new Option('--format <format>', 'svg for a browser or a printer, dxf for a drawing program').choices(DRAWING_FORMATS).default('svg')).addOption(new Option('--theme <theme>', 'colors of an SVG; auto: light or dark, as the viewer is set').choices(THEMES).default('print'))
        .addOption(rooms).action(act<DrawOptions>(draw));
    withFiles('model', 'the pieces as solids, for another program: glTF to be looked at, IFC4 for a building model')
        .addOption(into('models')).addOption(force).addOption(new Option('--format <format>', 'output format').choices(MODEL_FORMATS).default('gltf'))
        .addOption(rooms).action(act<ModelOptions>(model));
    withFiles('print', 'a page as the editor\'s panes show it, as a file: HTML that prints well, SVG, or CSV')
        .addOption(new Option('--page <page>', 'which page').choices(PRINTED_PAGES).default('plan')).addOption(new Option('--format <format>', 'output format').choices(PAGE_FORMATS).default('html'))
        .addOption(into('pages')).addOption(force).addOption(rooms).addOption(quick).action(act<PrintOptions>(print));
    const withStates = (name: string, about: string): Command => program.command(name).description(about)
        .argument('[from]', 'a commit, a tag, a branch, or the word signed: the commit that the contract names; default: the last commit').argument('[to]', 'another, or the word signed; default: the files as they lie')
        .option('--in <path>', 'the file or folder that is looked at', folder, '.').addOption(quick);
    const actOnStates = <Options>(job: (options: Options, world: World) => Promise<ExitCode>) =>
        (from: string | undefined, to: string | undefined, options: Options) => run(terminal => rehearsing({ ...world, terminal }, world.ready,
            live => job({ ...options, ...from !== undefined && { from }, ...to !== undefined && { to } }, live)));
    withStates('compare', 'what changed between two states of a house, in meaning: what is said, the ceiling, pieces, boards, hours, money')
        .addOption(new Option('--format <format>', 'output format').choices(CHANGE_FORMATS).default('human')).action(actOnStates<CompareOptions>(compare));
    withStates('change-order', 'what the client signs for a change: what is different, its price, the plans before and after')
        .requiredOption('--number <number>', 'its number', filled).option('--reason <words>', 'why', filled).option('--date <date>', 'the date on it; without one there is a line to fill in')
        .addOption(into('change-orders')).addOption(force).addOption(new Option('--format <format>', 'output format').choices(ORDER_FORMATS).default('pdf'))
        .action(actOnStates<ChangeOrderOptions>(changeOrder));
    program.command('explain').description('explain a rule; without a name, list all rules').argument('[rule]')
        .action((rule: string | undefined) => run(terminal => explain(rule, { terminal })));
    withFiles('format', 'format the files in the one standard layout').option('--check', 'change nothing, name the files that would change', false).action(act<FormatOptions>(format));
    program.command('language-server').description('answer an editor, by the Language Server Protocol').requiredOption('--stdio', 'talk over standard input and output')
        .action(() => run(() => world.serveEditor()));
    return program;
}

function filled(value: string): string {
    if (value.trim() === '') throw new InvalidArgumentError('It is empty.');
    return value;
}

/** A path. An option in its place is none: the path was forgotten. */
function folder(value: string): string {
    if (value.startsWith('--')) throw new InvalidArgumentError(`It is an option, and no folder. A folder that is called so is written ./${value}`);
    return filled(value);
}
