import { lowIn } from '../../report/cut-list/low-in-room.ts';
import { drawBoardSheets, drawLabels, labelGridFor, toSvg, withNotice, type Sheet } from '../../drawing/index.ts';
import { printedSheets } from '../../pages/shared/printed-sheets.ts';
import { besideName, fileName } from '../../text/file-name.ts';
import { standingNotice, standingOfRooms } from '../../report/standing.ts';
import { addressOf, fileNameOfHouse, titleOf, titleOfHouse, type House } from '../../report/house.ts';
import { csvSaw } from '../../report/sawing/csv.ts';
import { sawOf, type HouseSaw } from '../../report/sawing/house-saw.ts';
import { humanSaw } from '../../report/sawing/human.ts';
import { jsonSaw } from '../../report/sawing/json.ts';
import { drawnInto } from '../drawn-into.ts';
import { EXIT, worst, type ExitCode } from '../exit-code.ts';
import { FileNames } from '../file-names.ts';
import { isSound } from '../houses.ts';
import type { World } from '../world.ts';
import { OutputFolder, type OutputOptions } from '../output-folder.ts';
import { planned, type BoardsOptions } from './boards.ts';

export interface SawOptions extends BoardsOptions {
    /** The boards are drawn: into this folder, or where none is named into that of `out`. */
    readonly sheets?: string | true;
    readonly out?: string;
    readonly force?: boolean;
}
export const LABEL_PAPERS = ['letter', 'A4'] as const;
export interface LabelOptions extends Omit<BoardsOptions, 'format'>, OutputOptions {
    /** By the job's own unit where it is not said. */
    readonly paper?: (typeof LABEL_PAPERS)[number];
}

/** Everything at the saw in its order; with `sheets` also every board as it lies there, drawn to be printed. */
export async function saw(options: SawOptions, world: World): Promise<ExitCode> {
    const out = drawnInto(options.sheets, options.out, 'sheets');
    const { houses, plans, code } = await planned(options, world);
    const { terminal } = world;
    const saws = plans.map(sawOf);
    let written: ExitCode = EXIT.clean;
    if (out === undefined) {
        switch (options.format) {
            case 'human': terminal.result(humanSaw(saws, terminal.paint)); break;
            case 'json': terminal.result(jsonSaw(saws)); break;
            case 'csv': terminal.result(csvSaw(saws)); break;
        }
    } else written = await writeSheets(saws, 'boards', { ...options, out }, world, boardSheets);
    const complete = plans.every(({ plan }) => plan.unplaced.length === 0);
    return worst(worst(code, written), isSound(houses) && complete ? EXIT.clean : EXIT.findings);
}

/** A label for every piece, and for every bundle of spacers cut alike, in the order they come off the saw, on sheets to be cut apart. */
export async function labels(options: LabelOptions, world: World): Promise<ExitCode> {
    const { houses, plans, code } = await planned({ ...options, format: 'human' }, world);
    const written = await writeSheets(plans.map(sawOf), 'labels', options, world, ({ house, order }) => {
        const grid = { ...labelGridFor(order), ...options.paper !== undefined && { paper: options.paper } };
        return drawLabels(order, titleOfHouse(house), grid, lowIn(house.rooms));
    });
    return worst(worst(code, written), isSound(houses) && plans.every(({ plan }) => plan.unplaced.length === 0) ? EXIT.clean : EXIT.findings);
}

function boardSheets({ house, order }: HouseSaw): readonly Sheet[] {
    const { job } = house;
    return drawBoardSheets(order, { job: titleOf(job), rooms: roomNames(house), ...job.client === undefined ? {} : { client: job.client.value } });
}

function roomNames({ rooms }: House): string {
    return rooms.map(({ room }) => room.title ?? room.name).join(', ');
}

/** An SVG for every sheet, and one HTML file that prints them all. A house without anything to cut has none. */
async function writeSheets(
    saws: readonly HouseSaw[], kind: string, options: OutputOptions, world: World, draw: (saw: HouseSaw) => readonly Sheet[],
): Promise<ExitCode> {
    const folder = new OutputFolder(options, world);
    const names = new FileNames();
    let any = false;
    for (const saw of saws) {
        const standing = standingOfRooms(saw.house.rooms);
        standingNotice(standing).forEach((line, i) => world.terminal.say(i === 0 ? line : `  ${line}`));
        const sheets = draw(saw).map(sheet => withNotice(sheet, standingNotice(standing)));
        if (sheets.length === 0 || saw.order.steps.length === 0) continue;
        any = true;
        const words = fileNameOfHouse(saw.house);
        const name = names.free(n => fileName(kind, n === 1 ? words : `${words} ${n}`, 'html'));
        await folder.write([
            ...sheets.map((sheet, i) => ({ name: names.free(n => besideName(name, i + n, 'svg')), content: toSvg(sheet) })),
            { name, content: printedSheets(sheets[0]!.title.replace(/, sheet 1 of \d+/, ''), sheets) },
        ], addressOf(saw.house));
    }
    if (!any) world.terminal.say('There is nothing to cut.');
    return folder.code;
}
