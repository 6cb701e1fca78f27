import { mkdir, writeFile } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { drawBoardSheets, drawLabels, labelGridFor, toSvg, withNotice, type Sheet } from '../../drawing/index.ts';
import { printedSheets } from '../../pages/shared/printed-sheets.ts';
import { fileName } from '../../pages/shared/printable.ts';
import { standingNotice, standingOfRooms } from '../../report/standing.ts';
import { fileNameOfHouse, titleOf, titleOfHouse, type House } from '../../report/house.ts';
import { csvSaw } from '../../report/sawing/csv.ts';
import { sawOf, type HouseSaw } from '../../report/sawing/house-saw.ts';
import { humanSaw } from '../../report/sawing/human.ts';
import { jsonSaw } from '../../report/sawing/json.ts';
import { EXIT, UsageError, worst, type ExitCode } from '../exit-code.ts';
import { isSound } from '../houses.ts';
import type { World } from '../input.ts';
import { reasonOf } from '../read-text.ts';
import { planned, type BoardsOptions } from './boards.ts';

export interface SawOptions extends BoardsOptions {
    /** The folder for the drawn boards; nothing is drawn where none is named. */
    readonly sheets?: string;
}
export const LABEL_PAPERS = ['letter', 'A4'] as const;
export interface LabelOptions extends Omit<BoardsOptions, 'format'> {
    readonly out: string;
    /** By the job's own unit where it is not said. */
    readonly paper?: (typeof LABEL_PAPERS)[number];
}

/** Everything at the saw in its order; with `sheets` also every board as it lies there, drawn to be printed. */
export async function saw(options: SawOptions, world: World): Promise<ExitCode> {
    const { houses, plans, code } = await planned(options, world);
    const { terminal } = world;
    const saws = plans.map(sawOf);
    if (options.sheets === undefined) {
        switch (options.format) {
            case 'human': terminal.result(humanSaw(saws, terminal.paint)); break;
            case 'json': terminal.result(jsonSaw(saws)); break;
            case 'csv': terminal.result(csvSaw(saws)); break;
        }
    } else await writeSheets(saws, 'boards', options.sheets, world, boardSheets);
    const complete = plans.every(({ plan }) => plan.unplaced.length === 0);
    return worst(code, isSound(houses) && complete ? EXIT.clean : EXIT.findings);
}

/** A label for every piece, in the order the pieces come off the saw, on sheets to be cut apart. */
export async function labels(options: LabelOptions, world: World): Promise<ExitCode> {
    const { houses, plans, code } = await planned({ ...options, format: 'human' }, world);
    await writeSheets(plans.map(sawOf), 'labels', options.out, world, ({ house, order }) =>
        drawLabels(order, titleOfHouse(house), options.paper === undefined ? labelGridFor(order) : { ...labelGridFor(order), paper: options.paper }));
    return worst(code, isSound(houses) && plans.every(({ plan }) => plan.unplaced.length === 0) ? EXIT.clean : EXIT.findings);
}

export function boardSheets({ house, order }: HouseSaw): readonly Sheet[] {
    const { job } = house;
    return drawBoardSheets(order, { job: titleOf(job), rooms: roomNames(house), ...job.client === undefined ? {} : { client: job.client.value } });
}

function roomNames({ rooms }: House): string {
    return rooms.map(({ room }) => room.title ?? room.name).join(', ');
}

/** An SVG for every sheet, and one HTML file that prints them all. A house without anything to cut has none. */
async function writeSheets(saws: readonly HouseSaw[], kind: string, out: string, { cwd, terminal }: World, draw: (saw: HouseSaw) => readonly Sheet[]): Promise<void> {
    const folder = resolve(cwd, out);
    const taken = new Set<string>();
    await mkdir(folder, { recursive: true }).catch((error: unknown) => { throw new UsageError(`${out} ${reasonOf(error)}`); });
    for (const saw of saws) {
        const standing = standingOfRooms(saw.house.rooms);
        standingNotice(standing).forEach((line, i) => terminal.say(i === 0 ? line : `  ${line}`));
        const sheets = draw(saw).map(sheet => withNotice(sheet, standingNotice(standing)));
        if (sheets.length === 0 || saw.order.steps.length === 0) continue;
        const base = free(fileName(kind, fileNameOfHouse(saw.house), 'html').replace(/\.html$/, ''), taken);
        const files = [
            ...sheets.map((sheet, i) => ({ name: `${base}-${i + 1}.svg`, text: toSvg(sheet) })),
            { name: `${base}.html`, text: printedSheets(sheets[0]!.title.replace(/, sheet 1 of \d+/, ''), sheets) },
        ];
        for (const { name, text } of files) {
            const path = join(folder, name);
            await writeFile(path, text).catch((error: unknown) => { throw new UsageError(`${name} ${reasonOf(error)}`); });
            terminal.result(`${relative(cwd, path) || path}\n`);
        }
    }
    if (taken.size === 0) terminal.say('There is nothing to cut.');
}

function free(wish: string, taken: Set<string>): string {
    for (let n = 1; ; n++) {
        const name = n === 1 ? wish : `${wish}-${n}`;
        if (taken.has(name)) continue;
        taken.add(name);
        return name;
    }
}
