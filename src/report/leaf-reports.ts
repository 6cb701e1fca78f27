import type { Ceiling } from '../ceiling/model.ts';
import { bowedWalls } from '../measure/bowed.ts';
import { layoutOf } from '../pipeline/inspect.ts';
import type { TakeOff } from '../takeoff/model.ts';
import type { CsvText, JsonText } from '../text/fit.ts';
import { benchContent } from './bench/content.ts';
import { csvBench } from './bench/csv.ts';
import { jsonBench } from './bench/json.ts';
import { benchLeaf } from './bench/leaf.ts';
import type { House, RoomPieces } from './house.ts';
import { holdingContent } from './joists/content.ts';
import { csvJoists } from './joists/csv.ts';
import { jsonJoists } from './joists/json.ts';
import { joistsLeaf } from './joists/leaf.ts';
import type { Leaf } from './leaf.ts';
import type { Files } from './look.ts';
import { measureContent } from './measure/content.ts';
import { csvMeasure } from './measure/csv.ts';
import { jsonMeasure } from './measure/json.ts';
import { measureLeaf } from './measure/leaf.ts';
import { putUpContent } from './put-up/content.ts';
import { csvPutUp } from './put-up/csv.ts';
import { jsonPutUp } from './put-up/json.ts';
import { putUpLeaf } from './put-up/leaf.ts';
import { seasonsContent } from './seasons/content.ts';
import { csvSeasons } from './seasons/csv.ts';
import { jsonSeasons } from './seasons/json.ts';
import { seasonsLeaf } from './seasons/leaf.ts';
import { surveyContent } from './survey/content.ts';
import { csvSurvey } from './survey/csv.ts';
import { jsonSurvey } from './survey/json.ts';
import { surveyLeaf } from './survey/leaf.ts';
import { tradesContent } from './trades/content.ts';
import { csvTrades } from './trades/csv.ts';
import { jsonTrades } from './trades/json.ts';
import { tradesLeaf } from './trades/leaf.ts';
import { csvWalls } from './walls/csv.ts';
import { jsonWalls } from './walls/json.ts';
import { wallsLeaf } from './walls/leaf.ts';

/** A report of tables and sentences, in every form it is told in. */
interface LeafReport {
    /** What follows where a room could not be laid out. */
    readonly lacks: string;
    leaf(house: House): Leaf;
    json(houses: readonly House[], files: Files): JsonText;
    csv(houses: readonly House[]): CsvText;
}

type ContentOf<Content> = (room: RoomPieces) => Content | undefined;
interface Forms<Content> {
    leaf(house: House, contentOf: ContentOf<Content>): Leaf;
    json(houses: readonly House[], contentOf: ContentOf<Content>, files: Files): JsonText;
    csv(houses: readonly House[], contentOf: ContentOf<Content>): CsvText;
}

function report<Content>(lacks: string, contentOf: ContentOf<Content>, { leaf, json, csv }: Forms<Content>): LeafReport {
    return { lacks, leaf: house => leaf(house, contentOf), json: (houses, files) => json(houses, contentOf, files), csv: houses => csv(houses, contentOf) };
}

/** Of what follows only from a room that is laid out. */
function laidOut<Content>(contentOf: (ceiling: Ceiling, takeOff: TakeOff) => Content | undefined): ContentOf<Content> {
    return ({ room, takeOff }) => {
        const { ceiling } = layoutOf(room);
        return ceiling && takeOff && contentOf(ceiling, takeOff);
    };
}

/** Each by the word of its command and its page. */
export const LEAF_REPORTS = {
    bench: report('nobody knows which pieces its boards would do for', ({ room, takeOff }) => takeOff && benchContent(layoutOf(room), takeOff), { leaf: benchLeaf, json: jsonBench, csv: csvBench }),
    joists: report('nothing is known of what holds it', laidOut(holdingContent), { leaf: joistsLeaf, json: jsonJoists, csv: csvJoists }),
    measure: report('its pieces are not here', ({ room }) => measureContent(room), { leaf: measureLeaf, json: jsonMeasure, csv: csvMeasure }),
    'put-up': report('nobody knows how it goes up', laidOut(putUpContent), { leaf: putUpLeaf, json: jsonPutUp, csv: csvPutUp }),
    seasons: report('nobody knows how it moves', laidOut(seasonsContent), { leaf: seasonsLeaf, json: jsonSeasons, csv: csvSeasons }),
    survey: report('nothing is known of what its ceiling leaves of it', laidOut(surveyContent), { leaf: surveyLeaf, json: jsonSurvey, csv: csvSurvey }),
    trades: report('nobody knows what is in its way', laidOut(tradesContent), { leaf: tradesLeaf, json: jsonTrades, csv: csvTrades }),
    walls: report('nothing is known of what its walls do to it', laidOut((ceiling, { pieces }) => bowedWalls(ceiling, pieces)), { leaf: wallsLeaf, json: jsonWalls, csv: csvWalls }),
} as const;
