import type { LangiumDocument } from 'langium';
import type { FileContent } from '../../job/file.ts';
import type { JobSettings, Room, Stock } from '../../job/model.ts';
import type { Bid, Labor, Rates } from '../../job/rates.ts';
import * as ast from '../generated/ast.ts';
import { reachStamp } from '../workspace/services-of.ts';
import type { Family } from './instance.ts';
import type { Raised } from './raised.ts';
import type { Known } from './value.ts';

/**
 * What has been worked out of one document. It holds as long as the document and everything it reaches stay as they are:
 * then the stamp of the document is still the same, and so are all the objects made from it.
 */
export interface Store {
    readonly stamp: number;
    readonly raised: Raised[];
    readonly stocks: Map<ast.Stock, Stock | undefined>;
    readonly jobs: Map<ast.Job, JobSettings>;
    readonly labor: Map<ast.Labor, Labor>;
    readonly bids: Map<ast.Bid, Bid>;
    readonly profiles: Map<ast.Profile, Family>;
    readonly rooms: Map<ast.Room, Room>;
    /** What the file's own values come to. */
    readonly values: Map<ast.Param | ast.Let, Known | undefined>;
    content?: FileContent;
    /** Of the built-in library: rates where nobody says any. */
    noRates?: Rates;
}

const stores = new WeakMap<LangiumDocument, Store>();

export function storeOf(document: LangiumDocument): Store {
    const stamp = reachStamp(document);
    let store = stores.get(document);
    if (store?.stamp !== stamp) {
        stores.set(document, store = {
            stamp, raised: [], values: new Map(), stocks: new Map(), jobs: new Map(), labor: new Map(), bids: new Map(), profiles: new Map(), rooms: new Map(),
        });
    }
    return store!;
}
