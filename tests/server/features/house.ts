import type { LangiumDocument } from 'langium';
import type { InlayHint, Position, Range, TextEdit } from 'vscode-languageserver';
import { readFile } from '../../../src/language/read-file.ts';
import { inspectClosely } from '../../../src/pipeline/inspect-closely.ts';
import { createServerServices } from '../../../src/server/services.ts';
import { TestWorkspace, uriOf } from '../../support/workspace.ts';

/** A house of one yard, one detail and one room: four coffers by three, 12 x 10 ft. */
export const HOUSE: Readonly<Record<string, string>> = {
    'yard.coffer': `edition 1
stock pine-1x6 { size 1x6 }
stock pine-1x8 { size 1x8 }
stock pine-1x2 { size 1x2 }
`,
    'details/box.coffer': `edition 1
from "../yard.coffer" use pine-1x6, pine-1x8, pine-1x2

profile box(deep: Stock = pine-1x8) {
  blocking { stock pine-1x6 }
  spacers { stock pine-1x6; height 4" }
  sides { stock deep }
  cleats { rip 3/4" x 3/4" from pine-1x2 }
  bottom {
    stock  pine-1x6
    gap    0" to 1/16"
  }
}
`,
    'rooms/den.coffer': `edition 1
from "../details/box" use box

// a small room
// without a band
room den "Den" {
  wall north  12'
  wall east   10'
  grid {
    coffers-north  4
    coffers-east   3
    beams          box
    through        north-south
  }
  line B { beams box }
}
`,
};

export async function openHouse(texts: Readonly<Record<string, string>> = {}): Promise<TestWorkspace> {
    return TestWorkspace.serve({ ...HOUSE, ...texts }, createServerServices);
}

/** The same with what takes longer to find among the findings, as if the hand had rested. */
export async function openRested(texts: Readonly<Record<string, string>>): Promise<TestWorkspace> {
    return TestWorkspace.serve({ ...HOUSE, ...texts }, context => {
        const services = createServerServices(context), { findings } = services.coffer.checks;
        Object.assign(services.coffer.checks, { findings: (document: LangiumDocument) => [...findings(document), ...inspectClosely(readFile(document))] });
        return services;
    });
}

export const EVERYWHERE: Range = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };

/** The hints of a file, each behind the words it stands behind. */
export async function hints(house: TestWorkspace, path: string, range: Range = EVERYWHERE): Promise<string[]> {
    const document = house.document(path);
    const found: InlayHint[] = await house.coffer.lsp.InlayHintProvider!.getInlayHints(
        document, { textDocument: { uri: document.textDocument.uri }, range },
    ) ?? [];
    return found.map(({ position, label }) => `${document.textDocument.getText({ start: { ...position, character: 0 }, end: position }).trim().replace(/ +/g, ' ')} | ${typeof label === 'string' ? label : label.map(part => part.value).join('')}`);
}

/** The place in a file between « and » of words that occur once in it. */
export function placeIn(house: TestWorkspace, path: string, marked: string): { document: LangiumDocument; position: Position; textDocument: { uri: string } } {
    const document = house.document(path), text = document.textDocument.getText();
    const plain = marked.replace(/[«»]/g, ''), offset = text.indexOf(plain);
    if (offset < 0 || text.indexOf(plain, offset + 1) >= 0) throw new Error(`"${plain}" is not in ${path} once.`);
    return { document, position: document.textDocument.positionAt(offset + marked.indexOf('«')), textDocument: { uri: document.textDocument.uri } };
}

/** All files with the edits made, by path. */
export function applied(
    house: TestWorkspace, changes: Readonly<Record<string, readonly TextEdit[]>> | undefined, paths: readonly string[] = Object.keys(HOUSE),
): Record<string, string> {
    return Object.fromEntries(paths.map(path => {
        const { textDocument } = house.document(path);
        const edits = (changes?.[uriOf(path)
            .toString()] ?? []).map(({ range, newText }) => ({ from: textDocument.offsetAt(range.start), to: textDocument.offsetAt(range.end), newText }));
        return [path, edits.sort((a, b) => b.from - a.from)
            .reduce((text, { from, to, newText }) => text.slice(0, from) + newText + text.slice(to), textDocument.getText())];
    }));
}
