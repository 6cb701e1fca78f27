import type { Connection } from 'vscode-languageserver';
import { breath } from './breath.ts';
import type { Finding } from '../findings/finding.ts';
import type { FileContent } from '../job/file.ts';
import type { Room } from '../job/model.ts';
import { readFile } from '../language/read-file.ts';
import type { CofferSharedServices } from '../language/coffer-services.ts';
import { isBuiltin } from '../language/workspace/builtin.ts';
import { madeFrom } from '../language/workspace/made-from.ts';
import { inTurns, type Steps } from '../plain/steps.ts';
import { inspectClosely, stepsOf } from '../pipeline/inspect-closely.ts';
import { inspect, layoutOf } from '../pipeline/inspect.ts';
import { RULES } from '../rules/index.ts';
import { TRIALS, TRY_ROOM, type TrialsResult, type TryRoomParams, type TryRoomResult } from './messages.ts';
import { addressIn, fieldsOf } from './fields.ts';
import { documentAt } from './document-at.ts';

/** Answers an editor that lists the rooms of the house as things to be tried, and tries one: every rule, and the dry fit. */
export function answerTrials(connection: Connection, services: CofferSharedServices): void {
    const { WorkspaceManager, WorkspaceLock } = services.workspace;
    connection.onRequest(TRIALS, async (): Promise<TrialsResult> => {
        await WorkspaceManager.ready;
        return WorkspaceLock.read(() => trialsIn(services));
    });
    connection.onRequest(TRY_ROOM, async (params: unknown): Promise<TryRoomResult> => {
        const { uri: asked, room } = fieldsOf<TryRoomParams>(params), uri = addressIn(asked);
        if (uri === undefined || typeof room !== 'string') return null;
        await WorkspaceManager.ready;
        let steps: Steps<void> | undefined;
        await WorkspaceLock.read(() => { steps = stepsTo(services, { uri, room }); });
        if (steps) await inTurns(steps, breath);
        return WorkspaceLock.read(() => tryRoom(services, { uri, room }));
    });
}

/** Every room of the open folders, file by file, and the rules that each is tried by. */
export function trialsIn({ workspace }: CofferSharedServices): TrialsResult {
    const files = workspace.LangiumDocuments.all.filter(({ uri }) => !isBuiltin(uri)).toArray().sort((a, b) => (a.uri.toString() < b.uri.toString() ? -1 : 1));
    return {
        rules: RULES.map(({ name, title, check }) => ({ name, title, dryFit: check.fit !== undefined })),
        rooms: files.flatMap(document => readFile(document).rooms
            .map(({ name, title, at: { range } }) => ({ uri: document.uri.toString(), room: name, title: title ?? name, range }))),
    };
}

/** What takes long of it, in parts that are kept. */
function stepsTo(services: CofferSharedServices, { uri, room: name }: TryRoomParams): Steps<void> | undefined {
    const document = documentAt(services, uri), content = document && readFile(document), room = content?.rooms.find(one => one.name === name);
    return content && room && stepsOf(content, room);
}

/**
 * What is found of a room: in its own words, in those of its file that belong to no other room, and in the files that it is made from. What a
 * comment allows is not told. null: there is no such room any more.
 */
export function tryRoom(services: CofferSharedServices, { uri, room: name }: TryRoomParams): TryRoomResult {
    const document = documentAt(services, uri), content = document && readFile(document), room = content?.rooms.find(one => one.name === name);
    if (!content || !room) return null;
    const others = madeFrom([uri], services).flatMap(file => documentAt(services, file) ?? []).filter(one => one !== document && !isBuiltin(one.uri));
    const found = [...ofRoom(content, room), ...others.flatMap(other => inspect(readFile(other)).findings)];
    return {
        known: layoutOf(room).ceiling !== undefined,
        found: found.filter(({ allowed }) => !allowed).map(({ rule, severity, message, at }) => ({ rule, severity, message, uri: at.uri, range: at.range })),
    };
}

/** A room as if it were alone in its file. */
function ofRoom(content: FileContent, room: Room): readonly Finding[] {
    const alone = { ...content, rooms: [room] };
    return [...inspect(alone).findings, ...inspectClosely(alone)];
}
