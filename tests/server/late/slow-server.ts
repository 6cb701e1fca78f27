import { NodeFileSystemProvider } from 'langium/node';
import type { Connection } from 'vscode-languageserver';
import type { Finding } from '../../../src/findings/finding.ts';
import type { FileContent } from '../../../src/job/file.ts';
import { inspect } from '../../../src/pipeline/inspect.ts';
import { serve } from '../../../src/server/serve.ts';

const WORK_MS = 30;

/** The server with a closer look that takes its time and always finds something, so that tests can watch what becomes of it. */
export const slow = (connection: Connection): void => { serve(connection, new NodeFileSystemProvider(), (file: FileContent): Finding[] => {
    const [room] = file.rooms;
    if (!room) return [];
    connection.console.log(`looks at ${room.name}`);
    for (const end = Date.now() + WORK_MS; Date.now() < end;) { /* works */ }
    if (room.name === 'cursed') throw new Error('no luck');
    const beams = room.grid?.beams;
    if (!beams) return [];
    const edits = [{ uri: beams.at.uri, range: beams.at.range, text: 'other' }];
    return [
        {
            rule: 'slow-rule', severity: 'warning', at: beams.at, message: `The beams of ${room.name} were looked at: ${beams.value.blocking?.stock?.value.name ?? 'no stock'}.`,
            related: [{ at: beams.value.at, message: 'here' }], fixes: [{ title: 'Other beams', edits }],
        },
        ...inspect(file).findings,                                  // what is known already
    ];
}); };
