import { changesOf } from '../../src/changes/changes.ts';
import type { Changes, State } from '../../src/changes/model.ts';
import { readFile } from '../../src/language/read-file.ts';
import { statementsOf } from '../../src/language/statements.ts';
import { inspect, takeOffOf } from '../../src/pipeline/inspect.ts';
import { inspectClosely } from '../../src/pipeline/inspect-closely.ts';
import { price } from '../../src/pipeline/price.ts';
import { TestWorkspace } from './workspace.ts';

type Texts = Readonly<Record<string, string>>;

/** What changed from one state of a house to another, each read from the beginning in a workspace of its own. All rooms are of one house. */
export async function compareTexts(before: Texts, after: Texts): Promise<Changes> {
    return changesOf(await stateOf(before), await stateOf(after));
}

async function stateOf(texts: Texts): Promise<State> {
    const workspace = await TestWorkspace.open(texts), contents = Object.keys(texts).map(name => readFile(workspace.document(name)));
    const layouts = contents.flatMap(content => inspect(content).layouts), [first] = layouts;
    return {
        files: Object.keys(texts).map(name => ({ name, statements: statementsOf(workspace.document(name)) })),
        houses: first ? [{
            job: first.room.job, rooms: layouts.map(({ room, ceiling }) => ({ room, ...ceiling && { takeOff: takeOffOf(ceiling) } })),
            priced: price(layouts.map(({ room }) => room), first.room.job),
            findings: contents.flatMap(content => [...inspect(content).findings, ...inspectClosely(content)]),
        }] : [],
    };
}
