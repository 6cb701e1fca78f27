import { beforeAll, describe, expect, test } from 'vitest';
import type { Finding } from '../../src/findings/finding.ts';
import { builtinDocument } from '../../src/language/workspace/builtin.ts';
import * as ast from '../../src/language/generated/ast.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { inspectClosely } from '../../src/pipeline/inspect-closely.ts';
import { drawPlan } from '../../src/drawing/index.ts';
import type { RoomOnPage } from '../../src/pages/page.ts';
import { contentOn, PAGES } from '../../src/pages/pages.ts';
import { housePrice } from '../../src/pages/estimate/content.ts';
import { bidContent } from '../../src/report/bid/content.ts';
import { humanBoards } from '../../src/report/boards/human.ts';
import { invoiceOf } from '../../src/report/invoice/content.ts';
import { changesOf } from '../../src/changes/changes.ts';
import { priceRows } from '../../src/report/changes/words.ts';
import type { HousePlan } from '../../src/report/house.ts';
import type { Paint } from '../../src/report/look.ts';
import { holdingContent } from '../../src/report/joists/content.ts';
import { joistsLeaf } from '../../src/report/joists/leaf.ts';
import { measureContent } from '../../src/report/measure/content.ts';
import { putUpContent } from '../../src/report/put-up/content.ts';
import { putUpLeaf } from '../../src/report/put-up/leaf.ts';
import { seasonsContent } from '../../src/report/seasons/content.ts';
import { seasonsLeaf } from '../../src/report/seasons/leaf.ts';
import { surveyContent } from '../../src/report/survey/content.ts';
import { surveyLeaf } from '../../src/report/survey/leaf.ts';
import { tradesContent } from '../../src/report/trades/content.ts';
import { humanOrder } from '../../src/report/order/human.ts';
import { Rooms } from '../../src/server/panes/rooms.ts';
import { createServerServices } from '../../src/server/services.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { some } from '../support/full.ts';
import { JOB } from './said-job.ts';
import { TRIALS } from './said.ts';
import type { Change } from './trial.ts';

/**
 * Every property of the built-in library has an effect, or is told to have none: its value is changed in a job that says it, and
 * something of what is made from the job has to change with it. Where nothing does, a finding at its words says why.
 */
let workspace: TestWorkspace;
/** Readings that the trials of a survey's file name. */
const TABLES = { 'survey.csv': 'x,y,z,w\n900,700,340,352\n1000,700,351,350\n', 'again.csv': 'x,y,z,w\n900,700,349,352\n' };
beforeAll(async () => { workspace = await TestWorkspace.serve({ 'job.coffer': JOB, ...TABLES }, createServerServices); });

test('every property, with all that may stand behind it, is tried', () => {
    const kinds = (builtinDocument(workspace.shared).parseResult.value).items.filter(ast.isKind);
    const all = kinds.flatMap(({ name, props }) => props.flatMap(prop => [`${name}.${prop.name}`, ...prop.mods.map(mod => `${name}.${prop.name}/${mod.name}`)]));
    expect(Object.keys(TRIALS).sort()).toEqual(all.sort());
});

/** With some of its words changed, each of which stands in it once. */
function changed(text: string, changes: readonly Change[]): string {
    return changes.reduce((words, [from, to]) => {
        expect(words.split(from).length, `${from} stands there once`).toBe(2);
        return words.replace(from, () => to);
    }, text);
}

/** What is found in the job, and what is made from it, each when it is asked for; where in the text it says so is left out. */
class Outcome {
    private readonly texts = new Map<string, string>();
    constructor(readonly findings: readonly Finding[], private readonly room: RoomOnPage | undefined) {}

    /** Makes all of it, before the files change that it is made from. */
    settle(): void {
        for (const what of ['findings', ...Object.keys(MADE)]) this.of(what);
    }

    of(what: string): string {
        let text = this.texts.get(what);
        if (text === undefined) this.texts.set(what, text = withoutPlaces(what === 'findings' ? this.findings.map(({ rule, message, severity }) => ({ rule, message, severity })) : this.room ? MADE[what]!(this.room) : null));
        return text;
    }
}
const plain = { strong: String, warning: String, error: String, hint: String } as unknown as Paint;
const MADE: Readonly<Record<string, (room: RoomOnPage) => unknown>> = {
    ...Object.fromEntries((['estimate', 'boards', 'cut-list', 'plan', 'section'] as const).map(kind => [kind, (room: RoomOnPage) => contentOn(PAGES[kind], room, { width: 800, height: 600 })])),
    'printed plan': ({ ceiling, takeOff }) => drawPlan(ceiling, takeOff),
    'printed boards': room => humanBoards([planOf(room)], plain, { nameOf: uri => uri, textOf: () => undefined }),
    'order': room => humanOrder([planOf(room)], plain),
    'joists': ({ ceiling, takeOff, standing, layout: { room } }) => joistsLeaf({ job: room.job, rooms: [{ room, takeOff, standing }], alternates: [] }, () => holdingContent(ceiling, takeOff)).sections,
    'survey': ({ ceiling, takeOff, standing, layout: { room } }) => surveyLeaf({ job: room.job, rooms: [{ room, takeOff, standing }], alternates: [] }, () => surveyContent(ceiling, takeOff)).sections,
    'measure': ({ layout: { room } }) => measureContent(room),
    'trades': ({ ceiling, takeOff }) => tradesContent(ceiling, takeOff).map(({ fixture: _, ...task }) => task),
    'seasons': ({ ceiling, takeOff, standing, layout: { room } }) => seasonsLeaf({ job: room.job, rooms: [{ room, takeOff, standing }], alternates: [] }, () => seasonsContent(ceiling, takeOff)).sections,
    'change': room => changeOf(room),
    'put-up': ({ ceiling, takeOff, standing, layout: { room } }) => putUpLeaf({ job: room.job, rooms: [{ room, takeOff, standing }], alternates: [] }, () => putUpContent(ceiling, takeOff)).sections,
    'bid': room => bidContent(housePrice(room)),
    'invoice': room => {
        const invoice = invoiceOf(housePrice(room).house, { number: '3', final: false });
        return 'none' in invoice ? invoice.none : invoice.content;
    },
};
function planOf(room: RoomOnPage): HousePlan {
    const { house, priced: { plan } } = housePrice(room);
    return { house, plan };
}

/** What it costs to change nothing, with what is cut: a piece that does not fit was cut in vain. */
function changeOf(room: RoomOnPage): unknown {
    const { house: { job, rooms }, priced } = housePrice(room), state = { files: [], houses: [{ job, rooms, findings: [], priced }] };
    return priceRows(changesOf(state, state).houses[0]!);
}

const known = new Map<string, Outcome>();
async function outcomeOf(text: string): Promise<Outcome> {
    const before = known.get(text);
    if (before) return before;
    await workspace.edit({ 'job.coffer': text });
    const file = readFile(workspace.document('job.coffer')), rooms = new Rooms(workspace.shared), [there] = rooms.all();
    const outcome = new Outcome([...inspect(file).findings, ...inspectClosely(file)], there && rooms.onPage(there));
    known.set(text, outcome);
    return outcome;
}

function withoutPlaces(value: unknown): string {
    return JSON.stringify(value, (key, inner: unknown) => (['range', 'at', 'source', 'sources'].includes(key) ? undefined : inner))
        .replaceAll(/\.coffer:\d+(:\d+)?/g, '.coffer').replaceAll(/:\d+(-|:)\d+/g, '');
}

/** Rules that say that something is not looked at. */
const TELL = ['no-effect', 'not-computed-yet', 'not-supported-layout'];

/** Whether it is told of a line, or of a block that the line stands in. */
function toldOn(line: number, text: string, { findings }: Outcome): boolean {
    const lines = text.split('\n'), heads = [line];
    for (let at = line - 1, depth = 0; at >= 0; at--) {
        depth += lines[at]!.split('{').length - lines[at]!.split('}').length;
        if (depth === 1) { heads.push(at); depth = 0; }
    }
    return findings.some(({ rule, at: { range } }) => TELL.includes(rule) && heads.includes(range.start.line));
}

// all of them take twenty seconds
describe.each(some(Object.entries(TRIALS), 16))('%s', (_, { change, in: before = [] }) => {
    test('has an effect, or is told to have none', async () => {
        const first = changed(JOB, before), second = changed(first, [change]);
        const was = await outcomeOf(first);
        was.settle();
        const is = await outcomeOf(second);
        if (['findings', ...Object.keys(MADE)].some(what => was.of(what) !== is.of(what))) return;
        // the first line that has changed
        const old = first.split('\n'), line = second.split('\n').findIndex((words, i) => words !== old[i]);
        expect(toldOn(line, second, is), 'nothing is another, and nothing is said of it').toBe(true);
    });
});
