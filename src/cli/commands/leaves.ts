import type { Ceiling } from '../../ceiling/model.ts';
import { bowedWalls, type BowedWall } from '../../measure/bowed.ts';
import { layoutOf } from '../../pipeline/inspect.ts';
import { holdingContent, type RoomHolding } from '../../report/joists/content.ts';
import { csvJoists } from '../../report/joists/csv.ts';
import { jsonJoists } from '../../report/joists/json.ts';
import { joistsLeaf } from '../../report/joists/leaf.ts';
import { humanLeaves, type Leaf } from '../../report/leaf.ts';
import type { House, RoomPieces } from '../../report/house.ts';
import type { Files } from '../../report/look.ts';
import { measureContent, type RoomMeasures } from '../../report/measure/content.ts';
import { csvMeasure } from '../../report/measure/csv.ts';
import { jsonMeasure } from '../../report/measure/json.ts';
import { measureLeaf } from '../../report/measure/leaf.ts';
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
import { benchContent, type RoomBench } from '../../report/bench/content.ts';
import { csvBench } from '../../report/bench/csv.ts';
import { jsonBench } from '../../report/bench/json.ts';
import { benchLeaf } from '../../report/bench/leaf.ts';
import { csvWalls } from '../../report/walls/csv.ts';
import { jsonWalls } from '../../report/walls/json.ts';
import { wallsLeaf } from '../../report/walls/leaf.ts';
import type { CsvText, JsonText } from '../../text/fit.ts';
import type { TakeOff } from '../../takeoff/model.ts';
import { EXIT, worst, type ExitCode } from '../exit-code.ts';
import { isSound } from '../houses.ts';
import type { World } from '../world.ts';
import { housesAsked, type ListOptions } from './lists.ts';

/** A report of tables and sentences. `lacks`: what follows where a room could not be laid out. */
interface Report<Content> {
    readonly lacks: string;
    readonly contentOf: ContentOf<Content>;
    leaf(house: House, contentOf: ContentOf<Content>): Leaf;
    json(houses: readonly House[], contentOf: ContentOf<Content>, files: Files): JsonText;
    csv(houses: readonly House[], contentOf: ContentOf<Content>): CsvText;
}
type ContentOf<Content> = (room: RoomPieces) => Content | undefined;

/** Of what follows only from a room that is laid out. */
function laidOut<Content>(contentOf: (ceiling: Ceiling, takeOff: TakeOff) => Content | undefined): ContentOf<Content> {
    return ({ room, takeOff }) => {
        const { ceiling } = layoutOf(room);
        return ceiling && takeOff && contentOf(ceiling, takeOff);
    };
}

const JOISTS: Report<RoomHolding> = { lacks: 'nothing is known of what holds it', contentOf: laidOut(holdingContent), leaf: joistsLeaf, json: jsonJoists, csv: csvJoists };
const MEASURE: Report<RoomMeasures> = { lacks: 'its pieces are not here', contentOf: ({ room }) => measureContent(room), leaf: measureLeaf, json: jsonMeasure, csv: csvMeasure };
const TRADES: Report<readonly TradeTask[]> = { lacks: 'nobody knows what is in its way', contentOf: laidOut(tradesContent), leaf: tradesLeaf, json: jsonTrades, csv: csvTrades };

const SEASONS: Report<RoomSeasons> = { lacks: 'nobody knows how it moves', contentOf: laidOut(seasonsContent), leaf: seasonsLeaf, json: jsonSeasons, csv: csvSeasons };
const SURVEY: Report<RoomSurvey> = { lacks: 'nothing is known of what its ceiling leaves of it', contentOf: laidOut(surveyContent), leaf: surveyLeaf, json: jsonSurvey, csv: csvSurvey };

const WALLS: Report<readonly BowedWall[]> = { lacks: 'nothing is known of what its walls do to it', contentOf: laidOut((ceiling, { pieces }) => bowedWalls(ceiling, pieces)), leaf: wallsLeaf, json: jsonWalls, csv: csvWalls };
const BENCH: Report<RoomBench> = {
    lacks: 'nobody knows which pieces its boards would do for', contentOf: ({ room, takeOff }) => takeOff && benchContent(layoutOf(room), takeOff), leaf: benchLeaf, json: jsonBench, csv: csvBench,
};
const PUT_UP: Report<RoomPutUp> = { lacks: 'nobody knows how it goes up', contentOf: laidOut(putUpContent), leaf: putUpLeaf, json: jsonPutUp, csv: csvPutUp };

/** How every dimension is known, and what is still to measure, in the order in which one walks round each room. */
export function measure(options: ListOptions, world: World): Promise<ExitCode> {
    return told(MEASURE, options, world);
}

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

/** What walls that are not straight or not plumb do to what runs along them and ends at them. */
export function walls(options: ListOptions, world: World): Promise<ExitCode> {
    return told(WALLS, options, world);
}

/** Measured boards: what they are spoiled for and may still go into; and how cutters go by their gauges. */
export function bench(options: ListOptions, world: World): Promise<ExitCode> {
    return told(BENCH, options, world);
}

/** What goes up when, and how. */
export function putUp(options: ListOptions, world: World): Promise<ExitCode> {
    return told(PUT_UP, options, world);
}

async function told<Content>({ lacks, contentOf, leaf, json, csv }: Report<Content>, options: ListOptions, world: World): Promise<ExitCode> {
    const { houses, files, code } = await housesAsked(options, world);
    const { terminal } = world;
    switch (options.format) {
        case 'human': terminal.result(humanLeaves(houses.map(house => leaf(house, contentOf)), lacks, terminal.paint)); break;
        case 'json': terminal.result(json(houses, contentOf, files)); break;
        case 'csv': terminal.result(csv(houses, contentOf)); break;
    }
    return worst(code, isSound(houses) ? EXIT.clean : EXIT.findings);
}
