import type { AstNode } from 'langium';
import { sourceOf, sourceOfProperty } from '../types/place.ts';
import { quoted } from '../types/words.ts';
import type { Raise } from './raised.ts';

/** Deeper than this nothing a person writes depends on other things. */
const MOST_STEPS = 200;
/** Profiles that hand on two variants of each other come to more than can ever be worked out, though none of them is deep. */
const MOST_BEGUN = 1500;
/** As far as the stack goes, in expressions. */
const DEEPEST = 1500;

interface Step { readonly name: string; readonly raise: Raise; readonly user?: AstNode }
type Named = AstNode & { name?: string };

/**
 * What is being worked out in one reading of a house: notices what goes round in a ring, also through several files, and what depends
 * on too much.
 */
export class Progress {
    /** Outermost first. */
    private readonly working = new Map<AstNode, Step>();
    /** How much has been begun since nothing was being worked out. */
    private begun = 0;
    /** How deep in expressions we are, through everything that is being worked out. */
    private depth = 0;

    isWorkingOn(node: AstNode): boolean {
        return this.working.has(node);
    }

    /**
     * Works something out unless it is just being worked out: then everything on that ring is told so, each where it stands.
     * `user`: the words that ask for it, where it is not worked out for itself.
     */
    guarded<T>(node: Named, raise: Raise, make: () => T, user?: AstNode): T | undefined {
        const { working } = this;
        if (working.has(node)) { this.reportRing(node); return undefined; }
        if (working.size >= MOST_STEPS) { this.reportDepth(node, raise); return undefined; }
        this.begun = working.size === 0 ? 1 : this.begun + 1;
        if (this.begun > MOST_BEGUN) { if (this.begun === MOST_BEGUN + 1) this.reportBreadth(node); return undefined; }
        working.set(node, { name: node.name ?? '?', raise, ...user && { user } });
        try {
            return make();
        } finally {
            working.delete(node);
        }
    }

    /** One step further into an expression, unless that is too deep for the stack. */
    deeper<T>(step: () => T, tooDeep: () => void): T | undefined {
        if (this.depth >= DEEPEST) { tooDeep(); return undefined; }
        this.depth++;
        try {
            return step();
        } finally {
            this.depth--;
        }
    }

    private reportDepth(node: Named, raise: Raise): void {
        raise({
            rule: 'out-of-range', at: sourceOfProperty(node, 'name'),
            message: `${quoted(node.name)} is at the end of a chain of ${MOST_STEPS} values that depend on each other, which is too long to follow.`,
        });
    }

    /** Said where it began, at the use if it is a use: there is the one value that all of this is for. */
    private reportBreadth(node: Named): void {
        const [first] = this.working;
        if (!first) return;
        const [start, { name, raise, user }] = first;
        raise({
            rule: 'out-of-range', at: user ? sourceOf(user) : sourceOfProperty(start, 'name'),
            message: `${quoted(name)} is made from more than ${MOST_BEGUN} other values, ${quoted(node.name)} among them, which is too many to follow.`,
        });
    }

    private reportRing(start: AstNode): void {
        const steps = [...this.working];
        const ring = steps.slice(steps.findIndex(([node]) => node === start));
        for (const [i, [node, { name, raise }]] of ring.entries()) {
            const around = [...ring.slice(i), ...ring.slice(0, i + 1)].map(([, step]) => quoted(step.name));
            raise({
                rule: 'goes-round-in-a-ring', at: sourceOfProperty(node, 'name'),
                message: ring.length === 1 ? `${quoted(name)} depends on itself, so it has no value.`
                    : `${quoted(name)} depends on itself: ${around.join(' → ')}. One of them needs a value of its own.`,
            });
        }
    }
}
