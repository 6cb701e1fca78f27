import type { ExportFormat, PageContent } from '../pages/page.ts';
import { isPaneKind, type PaneKind } from '../pages/kinds.ts';
import type { Source } from '../provenance/source.ts';

export { PANE_KINDS, type PaneKind } from '../pages/kinds.ts';
export type { ExportFormat } from '../pages/page.ts';
export type { Source } from '../provenance/source.ts';

/**
 * What a pane and the extension that holds it say to each other. A pane that was opened by an older version of the program
 * may live on beside a newer one: so every message says its version, and one of another version is answered in words.
 */
export const VERSION = 1;

export interface RoomChoice { readonly uri: string; readonly room: string; readonly title: string }
/** `broken`: the picture is the last good one. `nothing`: there is no picture. */
export type Condition = 'current' | 'broken' | 'nothing';
/** The first error that keeps the picture from being made. */
export interface Problem { readonly message: string; readonly at: Source }

/** What the pane shows: which room, out of which, and how fresh it is. `content` undefined: the one before stands. */
export interface ContentMessage {
    readonly type: 'content';
    readonly kind: PaneKind;
    readonly shown: RoomChoice | null;
    readonly rooms: readonly RoomChoice[];
    readonly condition: Condition;
    readonly problem?: Problem;
    readonly content?: PageContent;
}
/** What the cursor in the text stands in, by the keys of a page's parts (`data-key`). `reveal`: somebody asked for it by hand. */
interface SelectionMessage { readonly type: 'selection'; readonly keys: readonly string[]; readonly reveal: boolean }
/** A part was picked in another pane that shows the same room. It stays so until the cursor comes into the words of others. */
interface PickedMessage { readonly type: 'picked'; readonly key: string }
/** What is ticked off, by key. */
interface TicksMessage { readonly type: 'ticks'; readonly keys: readonly string[] }
interface FollowingMessage { readonly type: 'following'; readonly pinned: boolean }
/** Words to show and to read out. */
interface PlainMessage { readonly type: 'plain'; readonly words: string }
/** Whether what is shown holds still, since somebody types. */
interface HoldingMessage { readonly type: 'holding'; readonly still: boolean }
export type ToPane = ContentMessage | SelectionMessage | PickedMessage | TicksMessage | FollowingMessage | PlainMessage | HoldingMessage;

/** The pane's script runs and waits for content. */
interface ReadyMessage { readonly type: 'ready' }
interface SizeMessage { readonly type: 'size'; readonly width: number; readonly height: number }
/** Show the words in the text. `was`: in the text as it was at the commit of this hash. */
interface SelectMessage { readonly type: 'select'; readonly at: Source; readonly was?: string }
/** Compare with the last commit again, with the one that was signed, or with one that is picked from the history. */
interface AgainstMessage { readonly type: 'against'; readonly to: 'last' | 'signed' | 'pick' }
/** Show this room. */
interface ChooseMessage { readonly type: 'choose'; readonly uri: string; readonly room: string }
/** Stay with the room, or follow the cursor again. */
interface PinMessage { readonly type: 'pin'; readonly pinned: boolean }
/** Go to another kind of pane, with the same room in it. */
interface SwitchMessage { readonly type: 'switch'; readonly kind: PaneKind }
/** Show this part in another kind of pane. */
interface FindMessage { readonly type: 'find'; readonly kind: PaneKind; readonly key: string }
interface TickMessage { readonly type: 'tick'; readonly add: readonly string[]; readonly remove: readonly string[] }
/** A part was picked by hand: other panes of the room show it too. */
interface PickMessage { readonly type: 'pick'; readonly key: string }
/** Write into the job that a board is cut, that a piece is spoiled, or another grid: by the key the page gives it. */
interface MarkMessage { readonly type: 'mark'; readonly as: MarkedAs; readonly key: string }
const MARKED_AS = ['cut', 'spoiled', 'grid'] as const;
export type MarkedAs = typeof MARKED_AS[number];
export function isMarkedAs(value: unknown): value is MarkedAs {
    return MARKED_AS.includes(value as MarkedAs);
}
/** Look no further for cheaper boards: the best that are known stay. */
interface StopMessage { readonly type: 'stop' }
/** Keep the page as a file. `file`: what only the pane can make, such as a picture of what it shows; else the server makes it. */
export interface ExportMessage { readonly type: 'export'; readonly format: ExportFormat; readonly state: unknown; readonly file?: { readonly name: string; readonly base64: string } }
export type FromPane =
    | ReadyMessage | SizeMessage | SelectMessage | ChooseMessage | PinMessage | SwitchMessage | FindMessage | PickMessage | TickMessage | MarkMessage
    | StopMessage | AgainstMessage | ExportMessage;

/** On the wire. */
export type Versioned<Message> = Message & { readonly version: typeof VERSION };

export function versioned<Message extends ToPane | FromPane>(message: Message): Versioned<Message> {
    return { ...message, version: VERSION };
}

/** Why a message was not taken: of another version, or none of ours. */
interface NotTaken { readonly type: 'not-taken'; readonly version: unknown }

type Check = (value: unknown) => boolean;
const isText: Check = value => typeof value === 'string';
const isFlag: Check = value => typeof value === 'boolean';
const isTexts: Check = value => Array.isArray(value) && value.every(isText);
const isNumber: Check = value => typeof value === 'number' && Number.isFinite(value);
const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value);
const anything: Check = () => true;
const either = (...texts: readonly string[]): Check => value => texts.includes(value as string);
const or = (...checks: readonly Check[]): Check => value => checks.some(check => check(value));
const isAbsent: Check = value => value === undefined;
const has = (fields: Readonly<Record<string, Check>>): Check => value => isObject(value) && Object.entries(fields).every(([name, check]) => check(value[name]));
const each = (check: Check): Check => value => Array.isArray(value) && value.every(check);

/** The whole name of a commit, by SHA-1 or SHA-256: nothing that a program could take for an option. */
export function isCommitHash(words: string): boolean {
    return /^(?:[0-9a-f]{40}|[0-9a-f]{64})$/.test(words);
}

/** The name of a file and no way to it: a pane may not say in which folder it goes. */
const isFileName: Check = value => typeof value === 'string' && /^(?!\.+$)[^/\\\p{Cc}]+$/u.test(value);
const isBase64: Check = value => typeof value === 'string' && value.length % 4 === 0 && /^[A-Za-z0-9+/]*={0,2}$/.test(value);
const isCount: Check = value => isNumber(value) && Number.isInteger(value) && (value as number) >= 0;
const isHash: Check = value => typeof value === 'string' && isCommitHash(value);
const isPosition = has({ line: isCount, character: isCount });
const isSource = has({ uri: isText, range: has({ start: isPosition, end: isPosition }) });
const isRoom = has({ uri: isText, room: isText, title: isText });

const TO_PANE: Readonly<Record<ToPane['type'], Check>> = {
    content: has({
        kind: isPaneKind, shown: or(value => value === null, isRoom), rooms: each(isRoom), condition: either('current', 'broken', 'nothing'),
        problem: or(isAbsent, has({ message: isText, at: isSource })), content: or(isAbsent, has({ sources: each(isSource) })),
    }),
    selection: has({ keys: isTexts, reveal: isFlag }),
    picked: has({ key: isText }),
    ticks: has({ keys: isTexts }),
    following: has({ pinned: isFlag }),
    plain: has({ words: isText }),
    holding: has({ still: isFlag }),
};
const FROM_PANE: Readonly<Record<FromPane['type'], Check>> = {
    ready: anything,
    size: has({ width: isNumber, height: isNumber }),
    select: has({ at: isSource, was: or(isAbsent, isHash) }),
    against: has({ to: either('last', 'signed', 'pick') }),
    choose: has({ uri: isText, room: isText }),
    pin: has({ pinned: isFlag }),
    switch: has({ kind: isPaneKind }),
    find: has({ kind: isPaneKind, key: isText }),
    pick: has({ key: isText }),
    tick: has({ add: isTexts, remove: isTexts }),
    stop: anything,
    mark: has({ as: isMarkedAs, key: isText }),
    export: has({ format: isText, file: or(isAbsent, has({ name: isFileName, base64: isBase64 })) }),
};

/** What came from the extension. */
export function readToPane(data: unknown): ToPane | NotTaken {
    return readAs<ToPane>(data, TO_PANE);
}
/** What came from a pane. */
export function readFromPane(data: unknown): FromPane | NotTaken {
    return readAs<FromPane>(data, FROM_PANE);
}

function readAs<Message extends { readonly type: string }>(data: unknown, checks: Readonly<Record<string, Check>>): Message | NotTaken {
    const version = isObject(data) ? data['version'] : undefined;
    const known = isObject(data) && version === VERSION && isText(data['type']) && Object.hasOwn(checks, data['type'] as string) && checks[data['type'] as string]!(data);
    return known ? data as unknown as Message : { type: 'not-taken', version };
}
