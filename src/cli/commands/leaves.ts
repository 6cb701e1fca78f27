import type { Ceiling } from '../../ceiling/model.ts';
import { layoutOf } from '../../pipeline/inspect.ts';
import { holdingContent, type RoomHolding } from '../../report/joists/content.ts';
import { csvJoists } from '../../report/joists/csv.ts';
import { jsonJoists } from '../../report/joists/json.ts';
import { joistsLeaf } from '../../report/joists/leaf.ts';
import { humanLeaves, type Leaf } from '../../report/leaf.ts';
import type { House, RoomPieces } from '../../report/house.ts';
import type { Files } from '../../report/look.ts';
import { putUpContent, type RoomPutUp } from '../../report/put-up/content.ts';
import { csvPutUp } from '../../report/put-up/csv.ts';
import { jsonPutUp } from '../../report/put-up/json.ts';
import { putUpLeaf } from '../../report/put-up/leaf.ts';
import { seasonsContent, type RoomSeasons } from '../../report/seasons/content.ts';
import { csvSeasons } from '../../report/seasons/csv.ts';
import { jsonSeasons } from '../../report/seasons/json.ts';
import { seasonsLeaf } from '../../report/seasons/leaf.ts';
import { surveyContent, type RoomSurvey } from '../../report/survey/content.ts';
import { csvSurvey } from '../../report/survey/csv.ts';
import { jsonSurvey } from '../../report/survey/json.ts';
import { surveyLeaf } from '../../report/survey/leaf.ts';
import { tradesContent, type TradeTask } from '../../report/trades/content.ts';
import { csvTrades } from '../../report/trades/csv.ts';
import { jsonTrades } from '../../report/trades/json.ts';
import { tradesLeaf } from '../../report/trades/leaf.ts';
import type { CsvText, JsonText } from '../../text/fit.ts';
import type { TakeOff } from '../../takeoff/model.ts';
import { EXIT, worst, type ExitCode } from '../exit-code.ts';
import { isSound } from '../houses.ts';
import type { World } from '../world.ts';
import { housesAsked, type ListOptions } from './lists.ts';

/** A report of tables and sentences. `lacks`: what follows where a room could not be laid out. */
interface Report<Content> {
    readonly lacks: string;
    contentOf(ceiling: Ceiling, takeOff: TakeOff): Content | undefined;
    leaf(house: House, contentOf: ContentOf<Content>): Leaf;
    json(houses: readonly House[], contentOf: ContentOf<Content>, files: Files): JsonText;
    csv(houses: readonly House[], contentOf: ContentOf<Content>): CsvText;
}
type ContentOf<Content> = (room: RoomPieces) => Content | undefined;

const JOISTS: Report<RoomHolding> = { lacks: 'nothing is known of what holds it', contentOf: holdingContent, leaf: joistsLeaf, json: jsonJoists, csv: csvJoists };
const TRADES: Report<readonly TradeTask[]> = { lacks: 'nobody knows what is in its way', contentOf: tradesContent, leaf: tradesLeaf, json: jsonTrades, csv: csvTrades };

const SEASONS: Report<RoomSeasons> = { lacks: 'nobody knows how it moves', contentOf: seasonsContent, leaf: seasonsLeaf, json: jsonSeasons, csv: csvSeasons };
const SURVEY: Report<RoomSurvey> = { lacks: 'nothing is known of what its ceiling leaves of it', contentOf: surveyContent, leaf: surveyLeaf, json: jsonSurvey, csv: csvSurvey };

const PUT_UP: Report<RoomPutUp> = { lacks: 'nobody knows how it goes up', contentOf: putUpContent, leaf: putUpLeaf, json: jsonPutUp, csv: csvPutUp };

/** What holds each beam: joists, screws, thread in wood, and what hangs there. */
export function joists(options: ListOptions, world: World): Promise<ExitCode> {
    return told(JOISTS, options, world);
}

/** What the other trades have to do: who moves what, to where, by which step. */
export function trades(options: ListOptions, world: World): Promise<ExitCode> {
    return told(TRADES, options, world);
}

/** What a year does to the joints, and what to tell the owner. */
export function seasons(options: ListOptions, world: World): Promise<ExitCode> {
    return told(SEASONS, options, world);
}

/** What the surveyed ceiling leaves of each side: gap, trim, scribe, blocking, shims. */
export function survey(options: ListOptions, world: World): Promise<ExitCode> {
    return told(SURVEY, options, world);
}

/** What goes up when, and how. */
export function putUp(options: ListOptions, world: World): Promise<ExitCode> {
    return told(PUT_UP, options, world);
}

async function told<Content>({ lacks, contentOf, leaf, json, csv }: Report<Content>, options: ListOptions, world: World): Promise<ExitCode> {
    const { houses, files, code } = await housesAsked(options, world);
    const { terminal } = world;
    const ofRoom = ({ room, takeOff }: RoomPieces): Content | undefined => {
        const { ceiling } = layoutOf(room);
        return ceiling && takeOff && contentOf(ceiling, takeOff);
    };
    switch (options.format) {
        case 'human': terminal.result(humanLeaves(houses.map(house => leaf(house, ofRoom)), lacks, terminal.paint)); break;
        case 'json': terminal.result(json(houses, ofRoom, files)); break;
        case 'csv': terminal.result(csv(houses, ofRoom)); break;
    }
    return worst(code, isSound(houses) ? EXIT.clean : EXIT.findings);
}
