import { URI, type LangiumDocument } from 'langium';
import type { CodeLens } from 'vscode-languageserver';
import { weakest } from '../../cutting/known.ts';
import type { JobSettings } from '../../job/model.ts';
import * as ast from '../../language/generated/ast.ts';
import { sourceOfProperty } from '../../language/types/place.ts';
import { servicesOf } from '../../language/workspace/services-of.ts';
import { housePrice } from '../../pages/estimate/content.ts';
import type { RoomOnPage } from '../../pages/page.ts';
import { t } from '../../pages/shared/words.ts';
import { printMoney } from '../../quantity/money.ts';
import { daysText, differenceText, hoursText } from '../../report/estimate/words.ts';
import type { Client } from '../client.ts';
import { SHOW_ESTIMATE, type ShowPiecesParams } from '../messages.ts';
import type { Rooms } from '../panes/rooms.ts';

/** Tells a lens of a price from one of pieces. */
interface PriceLens { readonly price: 'job' | 'alternate'; readonly uri: string; readonly name: string }
export function isPriceLens(data: unknown): data is PriceLens {
    return typeof data === 'object' && data !== null && 'price' in data;
}

/** Whether a file has a job or an alternate, and rates hold for it or for what lies below it. */
export function hasPrices(document: LangiumDocument): boolean {
    const file = document.parseResult.value;
    if (!ast.isFile(file) || !file.items.some(item => ast.isJob(item) || ast.isAlternate(item))) return false;
    return servicesOf(document).shared.workspace.Jobs.hasRatesNear(document);
}

/**
 * Above a job what it costs its client, above an alternate how much more or less; only where somebody has said rates. The
 * house is priced when the line comes into view, and then kept for as long as nothing in it changes.
 */
export class PriceLenses {
    constructor(private readonly client: Client, private readonly rooms: Rooms) {}

    provide(document: LangiumDocument): CodeLens[] {
        if (!hasPrices(document)) return [];
        const uri = document.uri.toString();
        return (document.parseResult.value as ast.File).items.flatMap((item): CodeLens[] => {
            if (ast.isJob(item) && item.title !== undefined) return [{ range: sourceOfProperty(item, 'title').range, data: { price: 'job', uri, name: item.title } satisfies PriceLens }];
            if (ast.isAlternate(item) && item.name !== undefined) return [{ range: sourceOfProperty(item, 'name').range, data: { price: 'alternate', uri, name: item.name } satisfies PriceLens }];
            return [];
        });
    }

    resolve(lens: CodeLens): CodeLens {
        const data = lens.data as PriceLens, room = this.roomOf(data);
        const shows: ShowPiecesParams | undefined = room && { uri: room.file.uri, room: room.layout.room.name };
        return this.client.lens(lens, room && titleOf(room, data), SHOW_ESTIMATE, shows);
    }

    /** Some room of the house that the line is about. */
    private roomOf({ price, uri, name }: PriceLens): RoomOnPage | undefined {
        const all = this.rooms.all().map(there => ({ there, job: there.layout.room.job }));
        const houses = price === 'job' ? all.filter(({ job }) => job.at !== undefined && URI.parse(job.at.uri).toString() === uri && job.title?.value === name) : firstOfEach(all);
        const rooms = houses.flatMap(({ there }) => this.rooms.onPage(there) ?? []);
        return price === 'job' ? rooms[0] : rooms.find(room => room.alternates.some(one => one.at.uri === uri && one.name === name));
    }
}

/** One room of every job is enough to ask for its alternates. */
function firstOfEach<T extends { readonly job: JobSettings }>(rooms: readonly T[]): T[] {
    return [...new Map([...rooms].reverse().map(room => [room.job, room])).values()];
}

function titleOf(room: RoomOnPage, { price, uri, name }: PriceLens): string | undefined {
    const { priced: { estimate, plan }, alternates } = housePrice(room);
    if (price === 'alternate') {
        const found = alternates.find(({ alternate }) => alternate.at.uri === uri && alternate.name === name);
        if (!found) return undefined;
        if (found.told.some(({ severity }) => severity === 'error')) return t('cannot be built this way');
        return differenceText(found.comparison.total.after.sub(found.comparison.total.before), found.priced.estimate.currency);
    }
    const days = estimate.days ? `, ${daysText(estimate.days)}` : '';
    const sum = `${printMoney(estimate.sums.total, estimate.currency)}, ${hoursText(estimate.minutes)}${days}`;
    // a pane may have looked for cheaper ones meanwhile
    const words = weakest(plan).percent === undefined ? t('{0}, on a first plan of boards', sum) : sum;
    return estimate.missing.length > 0 ? t('{0}, without what has no rate', words) : words;
}
