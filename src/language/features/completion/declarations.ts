import type * as ast from '../../generated/ast.ts';
import type { Vocabulary } from '../../scope/vocabulary.ts';
import { Skeleton } from './skeleton.ts';
import { PICTURE, type Suggestion } from './suggestion.ts';
import { profileTemplate, roomTemplate, stockTemplate, wholeJob, type Around, type Template } from './templates.ts';

/**
 * What a line at the margin of a file can begin with: where it can be, as a text without a mistake; else with what it cannot do without.
 * First stands what the house lacks: a board before a beam, a beam before a room.
 */
export function declarations(vocabulary: Vocabulary, file: ast.File, around: Around): readonly Suggestion[] {
    const block = (keyword: string, kindName: string, detail: string, named: 'name' | 'title' | undefined, template?: Template): Suggestion => {
        const skeleton = new Skeleton(vocabulary);
        const kind = vocabulary.kind(kindName);
        const head = named === 'name' ? `${keyword} ${skeleton.place('name')}` : named === 'title' ? `${keyword} "${skeleton.place('title')}"` : keyword;
        const body = kind ? skeleton.block(kind) : `{\n\t${skeleton.place()}\n}`;
        return { label: keyword, kind: PICTURE.keyword, detail, snippet: `${head} ${body}`, ...template, first: keyword === next, ...kind && { about: kind } };
    };
    const next = around.stocks.length === 0 ? 'stock' : around.profiles.length === 0 ? 'profile' : 'room';
    const isEmpty = file.items.length === 0 && file.uses.length === 0;
    return [
        ...isEmpty && next === 'stock' && file.editions.length === 0 ? [wholeJob()] : [],
        block('stock', 'Stock', 'a board you can buy', 'name', stockTemplate(around)),
        block('profile', 'Profile', 'a box beam', 'name', profileTemplate(around)),
        block('room', 'Room', 'a room and its ceiling', 'name', roomTemplate(around)),
        block('job', 'Job', 'what holds for the whole house', 'title'),
        block('labor', 'Labor', 'how long the work takes', undefined),
        block('bid', 'Bid', 'what goes on top of cost', undefined),
        block('alternate', 'Alternate', 'changes that are priced beside the job', 'name'),
        { label: 'let', kind: PICTURE.keyword, detail: 'a value with a name', snippet: 'let $1 = $2' },
        { label: 'from', kind: PICTURE.keyword, detail: 'names from another file', snippet: 'from "$1" use $2', opens: true },
        { label: 'edition', kind: PICTURE.keyword, detail: 'of the language, in the first line', snippet: 'edition 1', ...isEmpty && file.editions.length === 0 && { first: true } },
    ];
}
