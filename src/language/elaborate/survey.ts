import { AstUtils, UriUtils } from 'langium';
import type { Survey, SurveyPoint } from '../../job/survey.ts';
import type { Corner } from '../../job/model.ts';
import type * as ast from '../generated/ast.ts';
import { isBroken } from '../types/broken.ts';
import { wordsOf } from '../types/values.ts';
import { quoted } from '../types/words.ts';
import { listed } from '../../plain/words.ts';
import { isInside } from '../workspace/imports.ts';
import { servicesOf } from '../workspace/services-of.ts';
import { TABLE_ENDING, tableAt } from '../workspace/tables.ts';
import type { CellUnit } from './readings-cell.ts';
import { readReadings } from './readings-file.ts';
import type { Reading } from './reading.ts';
import { recordedBy } from './recorded.ts';

/** What was read of a ceiling; undefined where nothing is said of it. A line that says too little is told, and left out. */
export function readSurvey(room: Reading, home: ast.Room): Survey | undefined {
    const survey = room.inner('survey'), kind = survey?.word<'level' | 'following'>('plane'), scribe = survey?.length('scribe');
    const fall = survey?.length('plane', 'fall'), over = survey?.length('plane', 'over'), reading = survey?.length('plane', 'at'), method = survey?.word<string>('method');
    if (!survey || !kind || !scribe || !fall || !over) return undefined;
    let lacks = false;
    const file = pointsOfFile(survey, () => { lacks = true; });
    const { at } = survey.place(home);
    return {
        at, ...method && { method }, ...recordedBy(survey, mod => survey.found('method', mod), method?.at ?? at, true), points: [...pointsOf(survey), ...file], lacks,
        plane: { ...kind, fall, over, ...reading && { reading } }, scribe,
    };
}

function pointsOf(survey: Reading): SurveyPoint[] {
    const property = survey.block.declaration('point');
    const said = survey.block.entries.get('point')?.lines.filter(line => !isBroken(line)) ?? [];
    return said.flatMap((words): SurveyPoint[] => {
        const at = wordsOf(words);
        if (words.values.length !== 2) {
            survey.evaluator.raise({ rule: 'value-missing', at, message: `${quoted('point')} needs two lengths: how far east and how far south of the north-west corner, such as point 4', 2' 6" up 14 3/8".` });
            return [];
        }
        const up = survey.modOn(words, 'point', 'up'), line = property && survey.line(words, property, 'Survey');
        const [x, y] = line?.lengths('value') ?? [], height = up && survey.ticks(up);
        const known = recordedBy(survey, mod => survey.modOn(words, 'point', mod), at);
        return x === undefined || y === undefined || height === undefined ? [] : [{ x, y, up: height, at, ...Object.keys(known).length > 0 && { known } }];
    });
}

/** The readings of the file that is named, each at the words that name it. What cannot be read of it is told there. */
function pointsOfFile(survey: Reading, lacking: () => void): SurveyPoint[] {
    const line = survey.block.entries.get('readings')?.lines.at(-1), path = survey.text('readings'), from = survey.word<Corner>('readings', 'from');
    const document = line && AstUtils.getDocument(line);
    if (!document || !path || !from) return [];
    const { at } = path, { shared: { workspace } } = servicesOf(document);
    const tell = (message: string): void => {
        lacking();
        survey.evaluator.raise({ rule: 'readings-unread', at, message, ...path.via && { via: path.via } });
    };
    const uri = tableAt(document.uri, path.value);
    if (!uri) {
        tell(TABLE_ENDING.test(path.value.trim()) ? `${quoted(path.value)} is not a path seen from this file. Write one that begins with ./ or ../, such as "./dining-survey.csv".`
            : 'Which file? Readings stand in a file whose name ends with .csv, .tsv or .txt, seen from this one, such as "./dining-survey.csv".');
        return [];
    }
    if (!isInside(uri, workspace.Imports.folders)) {
        tell(`${quoted(path.value)} is outside the repository (with no repository: outside the open folder). Files can only be read from inside it.`);
        return [];
    }
    const table = workspace.Tables.at(uri), name = UriUtils.basename(uri);
    // a path that comes out of something else than a text is not looked for
    if (!table) tell('The path of the file has to stand here, between quotes, such as "./dining-survey.csv".');
    else if ('missing' in table) tell(`There is no file ${quoted(path.value)}, seen from this one.${table.alike.length > 0 ? ` Similar names: ${listed(table.alike.map(each => quoted(each)), 'or')}.` : ''}`);
    else if ('unreadable' in table) tell(`${quoted(path.value)} ${table.unreadable}.`);
    else {
        const unit = survey.word<CellUnit>('readings', 'in')?.value, columns = columnsSaid(survey, tell);
        const { readings, troubles } = columns === 'wrong' ? { readings: [], troubles: [] } : readReadings(table, name, { from: from.value, ...columns && { columns }, ...unit && { unit } });
        troubles.forEach(tell);
        return readings.map(({ row, ...point }) => ({ ...point, at, inFile: { name, row, from: from.value } }));
    }
    return [];
}

function columnsSaid(survey: Reading, tell: (message: string) => void): readonly string[] | 'wrong' | undefined {
    const said = survey.modValues('readings', 'columns').flatMap(({ known: { value } }) => (value.is === 'text' ? [value.text] : []));
    if (said.length === 0 || said.length === 3) return said.length === 0 ? undefined : said;
    tell(`Three columns are needed: how far along the north wall, how far along the east wall, and the reading, such as columns "x", "y", "reading". Here ${said.length === 1 ? 'is one' : `are ${said.length}`}.`);
    return 'wrong';
}
