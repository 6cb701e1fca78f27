import type { Vocabulary } from '../../scope/vocabulary.ts';
import { Skeleton } from './skeleton.ts';
import { PICTURE, type Suggestion } from './suggestion.ts';

/** What a line at the margin of a file can begin with, each with what it cannot do without. */
export function declarations(vocabulary: Vocabulary): readonly Suggestion[] {
    const block = (keyword: string, kindName: string, detail: string, named: 'name' | 'title' | undefined): Suggestion => {
        const skeleton = new Skeleton(vocabulary);
        const kind = vocabulary.kind(kindName);
        const head = named === 'name' ? `${keyword} ${skeleton.place('name')}` : named === 'title' ? `${keyword} "${skeleton.place('title')}"` : keyword;
        const body = kind ? skeleton.block(kind) : `{\n\t${skeleton.place()}\n}`;
        return { label: keyword, kind: PICTURE.keyword, detail, snippet: `${head} ${body}`, ...kind && { about: kind } };
    };
    return [
        block('stock', 'Stock', 'a board you can buy', 'name'),
        block('profile', 'Profile', 'a box beam', 'name'),
        block('room', 'Room', 'a room and its ceiling', 'name'),
        block('job', 'Job', 'what holds for the whole house', 'title'),
        block('labor', 'Labor', 'how long the work takes', undefined),
        block('bid', 'Bid', 'what goes on top of cost', undefined),
        block('alternate', 'Alternate', 'changes that are priced beside the job', 'name'),
        { label: 'let', kind: PICTURE.keyword, detail: 'a value with a name', snippet: 'let $1 = $2' },
        { label: 'from', kind: PICTURE.keyword, detail: 'names from another file', snippet: 'from "$1" use $2' },
        { label: 'edition', kind: PICTURE.keyword, detail: 'of the language, in the first line', snippet: 'edition 1' },
    ];
}
