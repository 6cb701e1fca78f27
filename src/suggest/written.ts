import type { TextChange } from '../findings/finding.ts';
import type { Grid, JobSettings, Room, Spacing } from '../job/model.ts';
import type { Given, Source } from '../provenance/source.ts';
import { isWithin } from '../provenance/source.ts';
import { spelled } from '../rules/support/fixes.ts';
import type { Candidate } from './candidates.ts';

/** What a grid says otherwise than the text does now, and as a change of the text where that can be trusted. */
interface Written { readonly says: readonly string[]; readonly changes?: readonly TextChange[] }
/** A statement that says how a wall is divided. */
interface Statement { readonly word: string; readonly value: string; readonly along: string | undefined }

/** Undefined where a length cannot be written exactly in the job's own units. */
export function writtenOf({ across, down, through }: Candidate, { job, at }: Room, grid: Grid): Written | undefined {
    const north = statementOf('north', across.spacing, grid.alongNorth?.value, job), east = statementOf('east', down.spacing, grid.alongEast?.value, job);
    if (!north || !east) return undefined;
    const isSame = (said: Spacing | undefined, now: Spacing, of: Statement, wall: 'north' | 'east'): boolean => {
        const before = said && statementOf(wall, said, of.along, job);
        const isFromThere = said?.by !== 'lines' || now.by !== 'lines' || said.from.value === now.from.value;
        return said?.by === now.by && before?.value === of.value && isFromThere;
    };
    const parts = [
        ...isSame(grid.north, across.spacing, north, 'north') ? [] : [{ wall: 'north' as const, of: north, said: grid.north }],
        ...isSame(grid.east, down.spacing, east, 'east') ? [] : [{ wall: 'east' as const, of: east, said: grid.east }],
    ];
    const turned = through === grid.through?.value ? [] : [throughWord(through, grid)];
    const says = [...parts.map(({ of }) => textOf(of)), ...turned.map(word => `through ${word}`)];
    const divided = dividing(parts, grid, at.uri), runs = turned.map(word => replacing(grid.through, word, at.uri));
    if (!divided || runs.includes(undefined)) return { says };
    return { says, changes: [...divided, ...runs.map(change => change!)] };
}

function statementOf(wall: 'north' | 'east', spacing: Spacing, along: string | undefined, job: JobSettings): Statement | undefined {
    if (spacing.by === 'number') return { word: `coffers-${wall}`, value: String(spacing.coffers.value), along };
    if (spacing.by === 'size') return { word: 'coffer-size', value: '', along };
    const places = spacing.centers.map(({ value }) => spelled(value, job));
    return places.includes(undefined) ? undefined : { word: `lines-${wall}`, value: places.join(', '), along };
}

function textOf({ word, value, along }: Statement, gap = ' '): string {
    return `${word}${gap}${value}${along === undefined ? '' : ` along ${along}`}`;
}

/** Lines at 45 degrees are called by the way they fall. */
function throughWord(through: 'north-south' | 'east-west', { layNorthSouth, layEastWest }: Grid): string {
    if (through === 'north-south') return layNorthSouth?.how === 'falling' ? 'falling' : through;
    return layEastWest?.how === 'rising' ? 'rising' : through;
}

interface Part { readonly wall: 'north' | 'east'; readonly of: Statement; readonly said: Spacing | undefined }

/** Undefined where words that would have to change do not stand in the grid's own block, or are used by others too. */
function dividing(parts: readonly Part[], grid: Grid, uri: string): TextChange[] | undefined {
    const bySize = parts.filter(({ said }) => said?.by === 'size'), changes: (TextChange | undefined)[] = [];
    if (bySize.length > 0) {
        // both walls were divided by one line: the other wall keeps it where it is divided so still
        const both = [grid.north, grid.east].filter(said => said?.by === 'size').length;
        changes.push(bySize.length === both ? stated('coffer-size', bySize.map(({ of }) => of), grid, uri) : undefined);
    }
    for (const { wall, of, said } of parts) {
        if (said?.by === 'size') continue;
        if (said?.by === 'number' && of.word === `coffers-${wall}`) changes.push(replacing(said.coffers, of.value, uri));
        else changes.push(stated(said?.by === 'number' ? `coffers-${wall}` : `lines-${wall}`, [of], grid, uri));
    }
    return changes.includes(undefined) ? undefined : changes.map(change => change!);
}

/** Other words for a value that was said there, and nowhere else. */
function replacing(given: Given<unknown> | undefined, text: string, uri: string): TextChange | undefined {
    return given?.said && !given.via?.length && given.at.uri === uri ? { uri, range: given.at.range, text } : undefined;
}

/** Other statements in the place of one. */
function stated(word: string, of: readonly Statement[], { statements, body }: Grid, uri: string): TextChange | undefined {
    const at = statements?.[word];
    if (!at || at.uri !== uri || !body || !isWithin(at, body)) return undefined;
    const between = isOneLine(body) ? '; ' : `\n${' '.repeat(at.range.start.character)}`;
    return { uri, range: at.range, text: of.map(each => textOf(each, gapAfter(each.word, word))).join(between) };
}

/** Values stand below each other, two spaces behind the longest word. */
function gapAfter(word: string, instead: string): string {
    return ' '.repeat(Math.max(2, 2 + instead.length - word.length));
}

function isOneLine({ range }: Source): boolean {
    return range.start.line === range.end.line;
}
