import { afterCuttingText } from '../../report/estimate/after-cutting.ts';
import { bidContent } from '../../report/bid/content.ts';
import { printedBid } from '../../pages/bid/printed.ts';
import { fileName } from '../../text/file-name.ts';
import { USED_NOWHERE } from '../../plain/notice.ts';
import { standingLines, standingOfRooms, unusedLines } from '../../report/standing.ts';
import { addressOf, fileNameOfHouse, titleOfHouse } from '../../report/house.ts';
import { EXIT, worst, type ExitCode } from '../exit-code.ts';
import { FileNames } from '../file-names.ts';
import type { World } from '../world.ts';
import { OutputFolder, type OutputOptions } from '../output-folder.ts';
import { pricesOf, type EstimateOptions } from './estimate.ts';
import { housesAsked } from './lists.ts';

export const BID_FORMATS = ['html', 'pdf'] as const;
export interface BidOptions extends Omit<EstimateOptions, 'format'>, OutputOptions {
    readonly format: (typeof BID_FORMATS)[number];
    /** Stands on the page as it is written. */
    readonly date?: string;
}

/** The client's page of every house: `bid-JOB.html` or `.pdf`. What is not fit to be sent says so on the page: then the code is 1. */
export async function bid(options: BidOptions, world: World): Promise<ExitCode> {
    const asked = await housesAsked({ ...options, format: 'human' }, world);
    const { terminal } = world;
    const folder = new OutputFolder(options, world);
    let worstCode = asked.code;
    const names = new FileNames();
    for (const price of await pricesOf(asked, options, world)) {
        const content = bidContent(price, options.date);
        if (content.draft.length > 0) {
            [`The bid of ${titleOfHouse(price.house)} is a draft: ${content.draft.join(' ')} \`cofferwright estimate\` shows more.`, ...standingLines(standingOfRooms(price.house.rooms)).map(line => `  ${line}`)].forEach(line => terminal.say(line));
            worstCode = worst(worstCode, EXIT.findings);
        }
        const unused = unusedLines(standingOfRooms(price.house.rooms));
        if (unused.length > 0) [`${USED_NOWHERE}:`, ...unused.map(line => `  ${line}`)].forEach(line => terminal.say(line));
        if (price.after) terminal.say(`The bid of ${titleOfHouse(price.house)} prices the job as if nothing were cut yet. ${afterCuttingText(price.after)}`);
        const title = fileNameOfHouse(price.house);
        const name = names.free(n => fileName('bid', n === 1 ? title : `${title} ${n}`, options.format));
        await folder.write([{ name, content: options.format === 'pdf' ? await pdfOf(content) : printedBid(content) }], addressOf(price.house));
    }
    return worst(worstCode, folder.code);
}

/** The library that writes PDF is large, so it is read only when it is wanted. */
async function pdfOf(content: Parameters<typeof printedBid>[0]): Promise<Uint8Array> {
    const { bidPdf } = await import('../../exports/pdf/bid.ts');
    return await bidPdf(content);
}
