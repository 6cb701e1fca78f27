import { mkdir, writeFile } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { bidContent } from '../../report/bid/content.ts';
import { printedBid } from '../../pages/bid/printed.ts';
import { fileName } from '../../pages/shared/printable.ts';
import { standingLines, standingOfRooms } from '../../report/standing.ts';
import { fileNameOfHouse, titleOf } from '../../report/house.ts';
import { EXIT, UsageError, worst, type ExitCode } from '../exit-code.ts';
import type { World } from '../input.ts';
import { reasonOf } from '../read-text.ts';
import { pricesOf, type EstimateOptions } from './estimate.ts';
import { housesAsked } from './lists.ts';

export const BID_FORMATS = ['html', 'pdf'] as const;
export interface BidOptions extends Omit<EstimateOptions, 'format'> {
    readonly format: (typeof BID_FORMATS)[number];
    readonly out: string;
    /** Stands on the page as it is written. */
    readonly date?: string;
}

/** The client's page of every house: `bid-JOB.html` or `.pdf`. What is not fit to be sent says so on the page: then the code is 1. */
export async function bid(options: BidOptions, world: World): Promise<ExitCode> {
    const asked = await housesAsked({ ...options, format: 'human' }, world);
    const { terminal, cwd } = world;
    const folder = resolve(cwd, options.out);
    await mkdir(folder, { recursive: true }).catch((error: unknown) => { throw new UsageError(`${options.out} ${reasonOf(error)}`); });
    let worstCode = asked.code;
    const taken = new Set<string>();
    for (const price of await pricesOf(asked, options, world)) {
        const content = bidContent(price, options.date);
        if (content.draft.length > 0) {
            terminal.say([`The bid of ${titleOf(price.house.job)} is a draft: ${content.draft.join(' ')} \`cofferwright estimate\` shows more.`, ...standingLines(standingOfRooms(price.house.rooms)).map(line => `  ${line}`)].join('\n'));
            worstCode = worst(worstCode, EXIT.findings);
        }
        const bytes = options.format === 'pdf' ? await pdfOf(content) : printedBid(content);
        const path = join(folder, freeName(taken, fileNameOfHouse(price.house), options.format));
        await writeFile(path, bytes).catch((error: unknown) => { throw new UsageError(`${relative(cwd, path)} ${reasonOf(error)}`); });
        terminal.result(`${relative(cwd, path) || path}\n`);
    }
    return worstCode;
}

function freeName(taken: Set<string>, title: string, ending: string): string {
    for (let n = 1; ; n++) {
        const name = fileName('bid', n === 1 ? title : `${title} ${n}`, ending);
        if (taken.has(name)) continue;
        taken.add(name);
        return name;
    }
}

/** The library that writes PDF is large, so it is read only when it is wanted. */
async function pdfOf(content: Parameters<typeof printedBid>[0]): Promise<Uint8Array> {
    const { bidPdf } = await import('../../exports/pdf/bid.ts');
    return await bidPdf(content);
}
