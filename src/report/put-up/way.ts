import type { Path } from '../../putup/model.ts';

/** How a piece goes in, in a word: lifted straight up; beside its place, and pushed there; round what hangs in the way; over biscuits; or no way was found. */
export function wayOf(path: Path | null): 'up' | 'beside' | 'around' | 'over' | 'none' {
    return !path ? 'none' : path.around ? 'around' : path.over && path.by?.kind !== 'join-first' ? 'over' : isBeside(path) ? 'beside' : 'up';
}

export function isBeside({ aside: { x, y } }: Path): boolean {
    return x !== 0 || y !== 0;
}
