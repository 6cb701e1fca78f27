import { isSound, type Standing, type Told } from '../pipeline/standing.ts';
import type { FromOne } from './amounts-json.ts';

/** Why it is not to be built, bought or sold as it stands. Of what is not computed, what would be a wrong figure is left out of everything here. */
export interface StandingJson {
    /** Nothing was found wrong, and no figure lacks anything that is said. */
    readonly sound: boolean;
    /** Errors that stand open: of the text, of the rules, of the dry fit. */
    readonly errors: readonly ToldJson[];
    /** What the text says and nothing is computed from yet, so that a figure is wrong or missing; the message says which pieces are left out for it. */
    readonly notComputed: readonly ToldJson[];
    /** What the text says and nothing is computed from yet, while every figure here stands as it is. */
    readonly notUsed?: readonly ToldJson[];
    /** What has to be measured or seen to before anything is cut: dimensions that nobody verified, where the room says how its dimensions are known. */
    readonly beforeCutting?: readonly ToldJson[];
}

export interface ToldJson {
    readonly rule: string;
    readonly message: string;
    readonly file: string;
    readonly line: FromOne;
    readonly column: FromOne;
    /** The room it is about, where it is about one alone. */
    readonly room: string | null;
}

export function standingJson(standing: Standing): StandingJson {
    const { errors, notComputed, notUsed, beforeCutting } = standing;
    return {
        sound: isSound(standing), errors: errors.map(toldJson), notComputed: notComputed.map(toldJson), notUsed: notUsed.map(toldJson),
        ...beforeCutting.length > 0 && { beforeCutting: beforeCutting.map(toldJson) },
    };
}

export function toldJson({ rule, message, at: { range: { start } }, file, room }: Told): ToldJson {
    return { rule, message, file, line: start.line + 1, column: start.character + 1, room: room ?? null };
}
