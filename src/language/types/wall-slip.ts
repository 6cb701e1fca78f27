import { distance } from 'fastest-levenshtein';
import { SIDES, type Side } from '../../job/model.ts';
import type * as ast from '../generated/ast.ts';

/** The side of the room that a wall's name most likely was to be, one slip away from it; none where the wall has a heading of its own. */
export function slipOfWall({ name, mods }: Pick<ast.Fixture, 'name' | 'mods'>): Side | undefined {
    if (name === undefined || mods.some(({ decl }) => decl?.$refText === 'heading' || decl?.$refText === 'turn')) return undefined;
    const letters = (word: string): string => [...word].sort().join('');
    return SIDES.find(side => name !== side && (distance(name.toLowerCase(), side) <= 1 || letters(name.toLowerCase()) === letters(side)));
}
