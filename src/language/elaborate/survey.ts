import type { Survey, SurveyPoint } from '../../job/survey.ts';
import type * as ast from '../generated/ast.ts';
import { isBroken } from '../types/broken.ts';
import { wordsOf } from '../types/values.ts';
import { quoted } from '../types/words.ts';
import type { Reading } from './reading.ts';

/** What was read of a ceiling; undefined where nothing is said of it. A line that says too little is told, and left out. */
export function readSurvey(room: Reading, home: ast.Room): Survey | undefined {
    const survey = room.inner('survey'), kind = survey?.word<'level' | 'following'>('plane'), scribe = survey?.length('scribe');
    const fall = survey?.length('plane', 'fall'), over = survey?.length('plane', 'over'), reading = survey?.length('plane', 'at'), method = survey?.word<string>('method');
    if (!survey || !kind || !scribe || !fall || !over) return undefined;
    return { at: survey.place(home).at, ...method && { method }, points: pointsOf(survey), plane: { ...kind, fall, over, ...reading && { reading } }, scribe };
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
        return x === undefined || y === undefined || height === undefined ? [] : [{ x, y, up: height, at }];
    });
}
