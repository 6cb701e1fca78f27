import type { Comes } from '../../changes/places.ts';
import type { Part } from '../../takeoff/model.ts';

/** What a reader of the view has set. */
export interface ViewState {
    /** Parts that are not shown are false. */
    readonly parts: Partial<Readonly<Record<Part, boolean>>>;
    /** How far the parts are taken from each other, 0 to 100. A field of the page gives text. */
    readonly apart: number | string;
    /** How much of the room is cut away, 0 to 100, and from which side. */
    readonly cut: number | string;
    readonly cutFrom: CutFrom;
    readonly piece: string | null;
    /** The pieces are listed below the picture. */
    readonly list: boolean;
    /** It is watched how the ceiling is put up: so many steps are done. */
    readonly play: boolean;
    readonly step: number | string;
    /** What is otherwise since a commit is marked, and listed below the picture. */
    readonly changed: boolean;
}
export type { Comes };
/** Whence what has come since a commit, in the order in which it is told. */
export const COMES: readonly Comes[] = ['new', 'from', 'elsewhere'];
export type CutFrom = 'south' | 'west' | 'north' | 'east';
export const CUT_FROM: readonly CutFrom[] = ['south', 'west', 'north', 'east'];
export const VIEW_STATE: ViewState = { parts: {}, apart: 0, cut: 0, cutFrom: 'south', piece: null, list: false, play: false, step: 0, changed: false };

/** From where the ceiling is looked at. */
export type Look = 'floor' | 'below' | 'above';
export const LOOKS: readonly Look[] = ['floor', 'below', 'above'];

/** 0 to 1 from what a slider says. */
export function share(value: number | string): number {
    const number = Number(value);
    return Number.isFinite(number) ? Math.min(1, Math.max(0, number / 100)) : 0;
}
