import type { Connection, PublishDiagnosticsParams } from 'vscode-languageserver';

/** The same connection, but what is published of a file goes to `take`, which publishes by the one behind it. */
export function publishing(wire: Connection, take: (published: PublishDiagnosticsParams) => Promise<void>): Connection {
    return Object.create(wire, { sendDiagnostics: { value: take } }) as Connection;
}
