import type { BoardPlan } from '../cutting/model.ts';
import type { Ceiling, Layout } from '../ceiling/model.ts';
import type { Finding } from '../findings/finding.ts';
import type { Alternate } from '../job/alternate.ts';
import type { FileContent } from '../job/file.ts';
import type { PricePlans } from '../pipeline/price-plans.ts';
import type { RoomPutUp } from '../report/put-up/content.ts';
import type { Suggestions } from '../suggest/model.ts';
import type { Standing } from '../pipeline/standing.ts';
import type { Source } from '../provenance/source.ts';
import type { TakeOff } from '../takeoff/model.ts';
import type { ChangesKnown } from './changes/known.ts';
import type { PaneKind } from './kinds.ts';
import type { Content } from '../text/fit.ts';
import type { FileName } from '../text/file-name.ts';
import type { Steps } from '../plain/steps.ts';

/**
 * A kind of page: what it takes from a room, and the files it can be kept as. It runs in the server and in the command
 * line; what a pane's script does with the content is in src/panes. All are listed in pages.ts.
 */
export interface Page<Content extends PageContent = PageContent> {
    /** One that is of the whole house (kinds.ts) is made anew when any room of the house changes. */
    readonly kind: PaneKind;
    /**
     * Plain data, fit for JSON: all that the renderer of this kind needs, and no more. In several steps where making it takes longer
     * than whoever asks for something else meanwhile should wait.
     */
    readonly content: (room: RoomOnPage, wishes: Wishes) => Steps<Content>;
    /** Formats the page is kept in, by what makes them. `state` is the pane's own (sort order and the like) with its `ticks`, as far as it is known. */
    readonly exports: Partial<Readonly<Record<ExportFormat, (room: RoomOnPage, state: unknown, wishes?: Wishes) => Steps<Exported | Promise<Exported>>>>>;
    /** Whether there is anything to keep; where nothing is said there always is. */
    isThere?(wishes: Wishes): boolean;
    /** Set where making it takes longer than a keystroke may: then it waits until the hand rests. */
    readonly takesLong?: boolean;
    /** Set where it shows the house's boards: then it is made anew when more is known of them. */
    readonly showsBoards?: boolean;
    /** Set where it shows what changed in the house: then it is told what is known of that (`Wishes.changes`), and made anew when more is known. */
    readonly showsChanges?: boolean;
    /** Set where it shows other grids: its host may look for them step by step, and then it is made anew when they are there. */
    readonly showsOtherGrids?: boolean;
    /** Set where it shows how a room is put up: its host may work that out while the hand rests, and then it is made anew when it is there. */
    readonly showsOrder?: boolean;
}

/** Why nothing is to be built from it, with the number of its place. */
interface StandingLine {
    readonly words: string;
    readonly at: number;
    /** Said, and used in no figure: nothing is condemned for it. */
    readonly isCalm?: boolean;
    /** To be measured or seen to before anything is cut. */
    readonly isBefore?: boolean;
}

/** What every content has. */
export interface PageContent {
    /** The places in the text that the page leads to by number: see shared/sources.ts. */
    readonly sources: readonly Source[];
    /** The rooms whose pieces are ticked off on it, where it shows those of a whole house. */
    readonly rooms?: readonly { readonly uri: string; readonly room: string }[];
    /** Why nothing is to be built from it as it stands: a line each, with the number of its place. Put in for every kind of page alike (pages.ts). */
    readonly standing?: readonly StandingLine[];
}

/** A room that could be laid out, with all that is known of it. What takes long is made when it is asked for, and kept. */
export interface RoomOnPage {
    readonly file: FileContent;
    readonly layout: Layout;
    readonly ceiling: Ceiling;
    readonly takeOff: TakeOff;
    /** What was found in the room's own file and in the files it uses. */
    readonly findings: readonly Finding[];
    /** What has to be said with everything made from it. */
    readonly standing: Standing;
    /** Every room that is laid out of the house this room belongs to (all under the same `job`), this one among them, by file and place. */
    readonly house: readonly RoomOnPage[];
    /** Set where the rooms of the house are only those that were asked for. */
    readonly picked?: boolean;
    /** Alternates of the house, in the order of their files. */
    readonly alternates: readonly Alternate[];
    /** The plan of the house's boards, where its host looks for a cheaper one than the first. */
    readonly boards?: {
        readonly plan: BoardPlan;
        readonly proving?: Proving;
        /** Somebody told it to look no further before it was done. */
        readonly stopped?: true;
        /** Where somebody has looked for the boards of prices, and of the alternates too. */
        readonly forPrices?: PricePlans;
    };
    /** Other grids, where its host looks for them; made where they are asked for else. */
    readonly otherGrids?: Suggestions | 'looking';
    /** How it is put up, where its host works that out; made where it is asked for else. */
    readonly order?: RoomPutUp | 'looking';
    /** Set where what takes longer to find is wanted of alternates too. */
    readonly looksClosely?: boolean;
}

/** How far looking for cheaper boards has come: stocks looked at, of how many, and by how many percent the next may be above its cheapest. */
export interface Proving { readonly done: number; readonly of: number; readonly percent?: number }

/** What a pane says of itself that bears on the content. */
export interface Wishes {
    /** Its inner size in CSS pixels, in steps of 20; undefined until it has said so. */
    readonly width?: number;
    readonly height?: number;
    /** What changed in the house since the commit that the pane is compared with, where somebody looks for that. */
    readonly changes?: ChangesKnown;
}

/** CSS pixels that letters of a drawing in a pane have at least: what an editor's smallest print has. */
export const LEAST_LETTERS = 11;

export type ExportFormat = 'html' | 'svg' | 'csv' | 'json' | 'pdf' | 'dxf' | 'gltf' | 'ifc' | 'bid' | 'labels';

/** A file to keep. `name`: with its ending, of letters, digits and hyphens. */
interface Exported { readonly name: FileName; readonly bytes: Content }
