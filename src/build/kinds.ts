import { readdirSync, readFileSync } from 'node:fs';
import { URI, type LangiumDocument } from 'langium';
import { drawPanePlan, toSvg, type Sheet } from '../drawing/index.ts';
import { drawPaneMeeting, shownMeetings } from '../drawing/meetings/sheets.ts';
import { allSectionsOf, drawAnyPaneSection } from '../drawing/section/all-sections.ts';
import { solidsOf } from '../dryfit/solids.ts';
import type { Ceiling } from '../ceiling/model.ts';
import type * as ast from '../language/generated/ast.ts';
import { readFile } from '../language/read-file.ts';
import { createCofferServices } from '../language/services.ts';
import { inspect, takeOffOf } from '../pipeline/inspect.ts';

/** Where each kind of room, line, beam and meeting has an example: a job of one room, its title and what is to be said of it in the text. */
export const KINDS_FOLDER = 'src/language/kinds';
const DETAILS = 'details.coffer';

/** What is drawn of an example besides its plan: its section of that place among those of the room, or how things meet there. */
const BESIDES: Readonly<Record<string, readonly (`section ${number}` | `meeting ${number}`)[]>> = {
    'walls-one-by-one': ['section 1', 'section 2'], 'half-beams': ['section 1'], 'two-depths': ['meeting 0'], 'deeper-half-beams': ['section 1'], 'half-beams-of-two-depths': ['meeting 3'], 'timbers-along-walls': ['section 1', 'meeting 3'], 'returned-half-beams': ['meeting 4'],
    'tee-bar-through': ['meeting 0'], 'tee-stem-through': ['meeting 0'], 'ring': ['meeting 0'], 'capped': ['section 0'], 'lapped': ['section 0'], 'unlike-sides': ['section 0', 'meeting 0'], 'unlike-capped': ['section 0'], 'half-beams-unlike': ['section 1', 'section 2'],
    'bench-made': ['section 0'], 'solid': ['section 0', 'meeting 0'], 'molding-under': ['section 0', 'meeting 0'], 'molding-against': ['section 0'], 'panels': ['section 0'], 'butted': ['meeting 0'], 'outside-corner': ['meeting 0'], 'wrapped': ['section 1'], 'dies-by-choice': ['meeting 0'],
    'crown-coped': ['section 0'], 'crossing-by-crossing': ['meeting 0'],
};

const PLAN = { width: 620, height: 460 }, SECTION = { width: 620, height: 380 };
const ORDER: readonly string[] = [
    'walls-one-by-one', 'half-beams', 'deeper-half-beams', 'half-beams-of-two-depths', 'timbers-along-walls', 'returned-half-beams', 'closing-wall', 'ell', 'u-shape', 'chimney-breast', 'bay', 'jog', 'outside-corner',
    'one-diagonal', 'two-diagonals', 'split', 'fanned', 'forty-five', 'two-depths', 'dies-by-choice',
    'tee-bar-through', 'tee-stem-through', 'part-way', 'doubled', 'ring',
    'crossing-by-crossing', 'splices', 'long-sides', 'joists', 'served', 'capped', 'lapped', 'unlike-sides', 'unlike-capped', 'half-beams-unlike', 'bench-made', 'wrapped', 'solid', 'molding-under', 'molding-against', 'panels', 'panels-round-a-ring', 'butted', 'crown-coped', 'crown-outside',
];

/**
 * The page of kinds and its pictures by their paths: made from the examples by the program itself, the same bytes every time, black on white. Each
 * picture stands on the page by itself, with the reader's letters held to the width of ours: the font in every one would be three times the picture.
 */
export async function kindPages(): Promise<ReadonlyMap<string, string>> {
    const names = readdirSync(KINDS_FOLDER).filter(name => name.endsWith('.coffer') && name !== DETAILS).map(name => name.replace('.coffer', ''));
    const kinds = [...names].sort((a, b) => placeOf(a) - placeOf(b) || (a < b ? -1 : 1));
    const { shared } = createCofferServices(), documents = [DETAILS.replace('.coffer', ''), ...kinds].map(name => {
        const text = readFileSync(`${KINDS_FOLDER}/${name}.coffer`, 'utf8');
        return shared.workspace.LangiumDocumentFactory.fromString(text, URI.file(`/kinds/${name}.coffer`)) as LangiumDocument<ast.File>;
    });
    documents.forEach(document => shared.workspace.LangiumDocuments.addDocument(document));
    await shared.workspace.DocumentBuilder.build(documents, { validation: false });

    const pages = new Map<string, string>(), page: string[] = [INTRODUCTION.trim(), ''];
    const details = documents[0]!.textDocument.getText();
    for (const [i, name] of kinds.entries()) {
        const document = documents[i + 1]!, [layout] = inspect(readFile(document)).layouts;
        if (!layout?.ceiling) throw new Error(`The example ${name} cannot be laid out`);
        const sheets = drawn(name, layout.ceiling), text = document.textDocument.getText();
        sheets.forEach(({ file, sheet }) => pages.set(`${KINDS_FOLDER}/${file}`, toSvg(sheet, { theme: 'print', as: 'part of a page', fonts: 'held' })));
        const words = /\/\*\* ([^]*?) \*\//.exec(text)![1]!.replace(/\s*\n\s*/g, ' ');
        page.push(`## ${layout.room.title}`, '', words, '', '```coffer', text.slice(text.search(/^room /m)).trimEnd(), '```', '',
            ...sheets.map(({ file, sheet }) => `![${sheet.title}](kinds/${file})`), '');
    }
    page.push('## Stock and beams of these examples', '', '```coffer', details.trimEnd(), '```', '');
    pages.set('src/language/KINDS.md', page.join('\n'));
    return pages;
}

function placeOf(name: string): number {
    const place = ORDER.indexOf(name);
    return place < 0 ? ORDER.length : place;
}

function drawn(name: string, ceiling: Ceiling): { readonly file: string; readonly sheet: Sheet }[] {
    const takeOff = takeOffOf(ceiling);
    return [{ file: `${name}.svg`, sheet: drawPanePlan(ceiling, takeOff, PLAN) }, ...(BESIDES[name] ?? []).map(each => {
        const [what, place] = each.split(' ') as ['section' | 'meeting', string], at = Number(place);
        if (what === 'section') return { file: `${name}-section-${at + 1}.svg`, sheet: drawAnyPaneSection(ceiling, allSectionsOf(ceiling)[at]!, SECTION) };
        const shown = shownMeetings(ceiling, takeOff)[at]!, id = `meeting-${at + 1}`;
        return { file: `${name}-${id}.svg`, sheet: drawPaneMeeting(shown, id, ceiling, takeOff.pieces, solidsOf(ceiling, takeOff), SECTION.width) };
    })];
}

const INTRODUCTION = `
# Kinds of rooms, lines, beams and meetings

Each with an example and its drawing, which the program makes from the text beside it. Stock and beams that the examples share are at the end;
\`cofferwright cut-list\` on a file of [kinds](kinds) shows every piece. What can be written where is in [the reference](REFERENCE.md).
`;
