import { printedChangeOrder } from '../../pages/change-order/printed.ts';
import { printMoney } from '../../quantity/money.ts';
import { changeOrders, type ChangeOrderContent, type Order } from '../../report/change-order/content.ts';
import { addressOf, fileNameOfHouse, titleOf, type RoomPieces } from '../../report/house.ts';
import { fileName } from '../../text/file-name.ts';
import { isHalfKnown } from '../../changes/rooms.ts';
import { isSound } from '../../pipeline/standing.ts';
import { counted } from '../../plain/words.ts';
import type { Compared } from '../../report/changes/state.ts';
import { cutNoLongerFits } from '../../rules/cut-no-longer-fits.ts';
import { noSuchPiece } from '../../rules/no-such-piece.ts';
import { EXIT, worst, type ExitCode } from '../exit-code.ts';
import { FileNames } from '../file-names.ts';
import { OutputFolder, type OutputOptions } from '../output-folder.ts';
import { compareStates, type StatesAsked } from '../states.ts';
import type { World } from '../world.ts';

export const ORDER_FORMATS = ['html', 'pdf'] as const;
export interface ChangeOrderOptions extends StatesAsked, OutputOptions, Order { readonly format: (typeof ORDER_FORMATS)[number] }

/**
 * What the client signs for a change: `change-order-3-JOB.pdf` for every house that is otherwise. What is not fit to be signed says so on it: then the code
 * is 1.
 */
export async function changeOrder(options: ChangeOrderOptions, world: World): Promise<ExitCode> {
    const { compared, code } = await compareStates(options, world), { terminal } = world, open = notFitted(compared), isWell = isFit(compared, open);
    const folder = new OutputFolder(options, world), names = new FileNames(), orders = changeOrders(compared.changes, options, isWell);
    let worstCode = code;
    const unknown = compared.changes.houses.flatMap(house => house.rooms.filter(isHalfKnown).map(({ name }) => ({ house, name })));
    for (const { house, name } of unknown) {
        terminal.say(`There is no change order of ${titleOf(house.after!.job)}: room ${name} cannot be laid out in one of the two states, so nobody can tell what the change comes to. \`cofferwright check\` says why.`);
        worstCode = worst(worstCode, EXIT.findings);
    }
    if (orders.length > 0 && isWell && open.size > 0) terminal.say(`${counted(open.size, 'piece')} that ${open.size === 1 ? 'is' : 'are'} cut ${open.size === 1 ? 'is' : 'are'} wanted otherwise by this change, or no more: that is in its price, and \`cofferwright compare\` says what becomes of each. Mend the record once the change is agreed.`);
    if (orders.length + unknown.length === 0) terminal.say('No house that is in both states is otherwise: there is nothing to sign.');
    for (const { house, content } of orders) {
        const { job } = house.after!, { price } = house;
        if (content.draft.length > 0) {
            terminal.say(`The change order of ${titleOf(job)} is a draft: ${content.draft.join(' ')} \`cofferwright compare\` shows more.`);
            worstCode = worst(worstCode, EXIT.findings);
        }
        if (price?.atOldRates && !price.atOldRates.equals(price.total)) {
            const money = (amount: typeof price.total): string => printMoney(amount, price.currency);
            terminal.say(`Rates have changed since: the change is ${money(price.total)} as they are now, which is what the order says, and ${money(price.atOldRates)} as they were.`);
        }
        const title = fileNameOfHouse(house.after!), stem = `change-order ${options.number}`;
        const name = names.free(n => fileName(stem, n === 1 ? title : `${title} ${n}`, options.format));
        await folder.write([{ name, content: options.format === 'pdf' ? await pdfOf(content) : printedChangeOrder(content) }], addressOf(house.after!));
    }
    return worst(worstCode, folder.code);
}

/** What of the record the change makes wrong: its price has what was done in vain, and nobody mends the record before it is agreed. */
function notFitted({ changes }: Compared): ReadonlySet<string> {
    const come = changes.houses.flatMap(({ findings }) => findings.come).filter(({ rule, severity, allowed }) => severity === 'error' && !allowed && OF_THE_RECORD.has(rule));
    return new Set(come.map(keyOf));
}
const OF_THE_RECORD: ReadonlySet<string> = new Set<string>([cutNoLongerFits.name, noSuchPiece.name]);
function keyOf({ rule, message }: { readonly rule: string; readonly message: string }): string {
    return `${rule} ${message}`;
}

/** Both states can be built as they are drawn, and all of them is worked out. */
function isFit({ before, after }: Compared, open: ReadonlySet<string>): boolean {
    const passed = ({ standing, ...room }: RoomPieces): RoomPieces => {
        const errors = standing.errors.filter(one => !open.has(keyOf(one)));
        return { ...room, standing: { ...standing, errors } };
    };
    return [...before.rooms, ...after.rooms.map(passed)].every(({ takeOff, standing }) => takeOff !== undefined && isSound(standing));
}

/** The library that writes PDF is large, so it is read only when it is wanted. */
async function pdfOf(content: ChangeOrderContent): Promise<Uint8Array> {
    const { changeOrderPdf } = await import('../../exports/pdf/bid.ts');
    return await changeOrderPdf(content);
}
