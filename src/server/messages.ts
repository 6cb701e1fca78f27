import type { CommitThere } from '../job/commits.ts';
import type { PaneKind } from '../pages/kinds.ts';
import type { NoHistory, NoText } from '../pages/changes/known.ts';
import type { ExportFormat, PageContent } from '../pages/page.ts';
import type { Severity, TextChange } from '../findings/finding.ts';
import type { Condition, MarkedAs, Problem, RoomChoice } from '../panes/messages.ts';
import type { Position, Range } from '../provenance/source.ts';

/**
 * Messages between the extension and the server that the Language Server Protocol has not got. Both ends import this
 * file, so they cannot disagree.
 */
export const BUILTIN_DOCUMENT = 'cofferwright/builtinDocument';
/** Asks for the text of a document that exists only in the program, such as `builtin:///builtin.coffer`; null where there is none. */
export interface BuiltinDocumentParams { readonly uri: string }
export type BuiltinDocumentResult = string | null;

/**
 * A command of the editor's: shows the pieces of a room. An editor that has it lists it under `commands` in the
 * `initializationOptions`; then the line above a room leads there.
 */
export const SHOW_PIECES = 'cofferwright.showPieces';
/** The same for what the house of a room costs. */
export const SHOW_ESTIMATE = 'cofferwright.showPrice';
/** And for what changed in it since the last commit. */
export const SHOW_CHANGES = 'cofferwright.showChangesOf';
/** And for the places that name a stock or a profile. */
export const SHOW_USES = 'cofferwright.showUses';
export interface ShowUsesParams { readonly uri: string; readonly position: Position }
/** And for the page of a rule, by its name: then the code of a finding leads there. */
export const SHOW_RULE = 'cofferwright.showRule';
/** And for the list of what may stand at the cursor: then it opens again where a value is to be chosen. */
export const OPEN_LIST = 'editor.action.triggerSuggest';
export interface ShowPiecesParams { readonly uri: string; readonly room: string }
export interface InitializationOptions {
    readonly commands?: readonly string[];
    readonly readsFiles?: boolean;
    readonly readsHistory?: boolean;
    readonly colors?: Colors;
    /** What the server itself says, in the language of the editor, by the English text. What is missing is said in English. */
    readonly words?: Readonly<Record<string, string>>;
}

/** Tells that the editor has become light or dark: what is drawn in a hover lies on its ground. */
export const COLORS = 'cofferwright/colors';
export type Colors = 'light' | 'dark';
export interface ColorsParams { readonly colors: Colors }

/**
 * Questions of the server to the editor about files that are not on the server's disk. An editor that answers them says
 * `readsFiles` in its `initializationOptions`. null: there is none, or it cannot be read.
 */
export const FILE_KIND = 'cofferwright/fileKind', READ_FILE = 'cofferwright/readFile', LIST_FOLDER = 'cofferwright/listFolder';
export interface FileParams { readonly uri: string }
export type FileKindResult = 'file' | 'folder' | null;
export type ReadFileResult = string | null;
export type ListFolderResult = readonly { readonly uri: string; readonly kind: 'file' | 'folder' }[] | null;

/**
 * Questions of the server to the editor about a folder as it was at a commit, which the editor reads by its own git. An editor that answers them says
 * `readsHistory` in its `initializationOptions`.
 *
 * OLD_STATE: which state is meant, seen from a file. `commit`: its hash, or the name that a contract calls it by; null: the last one.
 */
export const OLD_STATE = 'cofferwright/oldState';
export interface OldStateParams { readonly uri: string; readonly commit: string | null }
/** `top`: the address of the repository. `others`: addresses of job files that were there and are not there now, or say something else on the disk. */
export type OldStateResult = { readonly commit: Commit; readonly top: string; readonly others: readonly string[] } | { readonly none: NoHistory };
/** `date`: `2026-10-03`; `subject`: the first line of its message. */
export interface Commit { readonly hash: string; readonly date: string; readonly subject: string }
/** What some job files said at a commit. Those that were not there are left out. */
export const OLD_FILES = 'cofferwright/oldFiles';
export interface OldFilesParams { readonly top: string; readonly commit: string; readonly files: readonly string[] }
export type OldFile = { readonly uri: string; readonly text: string } | { readonly uri: string; readonly noText: NoText };
export type OldFilesResult = readonly OldFile[];
/** A file of an earlier state with more bytes is not read: many times as long as the longest text that is. */
export const MOST_OLD_BYTES = 2_000_000;
/** Asks what git knows of commits that a file names; null where it cannot be asked. What cannot be told of is left out. */
export const NAMED_COMMITS = 'cofferwright/namedCommits';
export interface NamedCommitsParams { readonly uri: string; readonly names: readonly string[] }
export type NamedCommitsResult = readonly { readonly name: string; readonly is: CommitThere['is'] }[] | null;

/** Tells that there may be another last commit now, or a repository where none was. */
export const HISTORY_CHANGED = 'cofferwright/historyChanged';

/** Asks which files are of one job with a file: what it imports and what imports it, through any chain, itself among them. */
export const FILES_OF_JOB = 'cofferwright/filesOfJob';
export interface FilesOfJobParams { readonly uri: string }
export type FilesOfJobResult = readonly string[];

/** From the server: whether it is looking closely at rooms, which takes longer than a keystroke may. */
export const LOOKING = 'cofferwright/looking';
export interface LookingParams { readonly busy: boolean }

/** From the server: whether what it tells holds still, since somebody types. */
export const HOLDING = 'cofferwright/holding';
export interface HoldingParams { readonly still: boolean }

/** Asks for the rooms of the house as things to be tried, and by which rules. */
export const TRIALS = 'cofferwright/trials';
export interface TrialsResult {
    /** `dryFit`: it looks at the cut list put together. */
    readonly rules: readonly { readonly name: string; readonly title: string; readonly dryFit: boolean }[];
    readonly rooms: readonly { readonly uri: string; readonly room: string; readonly title: string; readonly range: Range }[];
}
/** Tries one of them. null: there is no such room. */
export const TRY_ROOM = 'cofferwright/tryRoom';
export interface TryRoomParams { readonly uri: string; readonly room: string }
export interface FoundInRoom { readonly rule: string; readonly severity: Severity; readonly message: string; readonly uri: string; readonly range: Range }
/** `known`: whether the room could be laid out at all. */
export type TryRoomResult = { readonly known: boolean; readonly found: readonly FoundInRoom[] } | null;

/**
 * What a pane is to show. Said when it opens, and again whenever its wishes change; the server answers with PANE_CONTENT now and
 * after every change, until PANE_CLOSED. `room`: the one chosen by hand; with `pinned` it stays, else the cursor leads away from it.
 */
export const PANE_SHOWS = 'cofferwright/paneShows';
export interface PaneShowsParams {
    readonly pane: string; readonly kind: PaneKind; readonly pinned: boolean;
    readonly room?: { readonly uri: string; readonly room: string };
    /** Inner size in CSS pixels. */
    readonly width?: number; readonly height?: number;
    /** What a pane of changes compares with: the whole hash of a commit, or `signed`; the last commit where nothing is said. */
    readonly against?: string;
}
export const PANE_CLOSED = 'cofferwright/paneClosed';
export interface PaneClosedParams { readonly pane: string }
/** Where the cursor is, said while there are panes. */
export const CURSOR = 'cofferwright/cursor';
export interface CursorParams { readonly uri: string; readonly position: Position }

/** From the server: what a pane shows now. `content` undefined: what was sent before stands. */
export const PANE_CONTENT = 'cofferwright/paneContent';
export interface PaneContentParams {
    readonly pane: string; readonly kind: PaneKind;
    readonly shown: RoomChoice | null; readonly rooms: readonly RoomChoice[];
    readonly condition: Condition; readonly problem?: Problem; readonly content?: PageContent;
}
/** From the server: the keys of the parts that the cursor stands in. */
export const PANE_SELECTION = 'cofferwright/paneSelection';
export interface PaneSelectionParams { readonly pane: string; readonly keys: readonly string[] }

/**
 * Asks what has to be written into the job's files so that they say that a board is cut or a piece is spoiled, or have another grid; or why it cannot
 * be, in words. null: the pane shows nothing, or knows no such board or piece.
 */
export const PANE_MARK = 'cofferwright/paneMark';
export interface PaneMarkParams { readonly pane: string; readonly as: MarkedAs; readonly key: string }
export type PaneMarkResult = { readonly edits: readonly TextChange[] } | { readonly words: string } | null;

/** Tells that nobody wants to wait for cheaper boards than those that a pane shows. */
export const PANE_STOP = 'cofferwright/paneStop';
export interface PaneStopParams { readonly pane: string }

/** Asks for a pane's page as a file; null where there is none to be made. */
export const PANE_EXPORT = 'cofferwright/paneExport';
export interface PaneExportParams { readonly pane: string; readonly format: ExportFormat; readonly state: unknown }
export type PaneExportResult = { readonly name: string; readonly text: string } | { readonly name: string; readonly base64: string } | null;
