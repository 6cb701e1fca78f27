/** Stands over everything that may not be built from, bought or sold as it is. */
export const NOT_AS_IT_STANDS = 'Not to be built from as it stands';
/** Stands over what a text says, and no figure here would be another for. */
export const USED_NOWHERE = 'Written, but not used in any figure here';
/** Stands over what has to be measured or seen to before a board is cut. */
export const BEFORE_CUTTING = 'Before anything is cut';

/** What stands at the head of an output: the words over it, and a line each; nothing where nothing has to be said. A calm one condemns nothing. */
export function isCalm([head]: readonly string[]): boolean {
    return head === `${USED_NOWHERE}:` || head === `${BEFORE_CUTTING}:`;
}
