import type { LangiumDocument } from 'langium';
import type { InlayHintProvider } from 'langium/lsp';
import { LSPErrorCodes, ResponseError, type InlayHint, type InlayHintParams } from 'vscode-languageserver';
import * as ast from '../../language/generated/ast.ts';
import { brokenLines } from '../../language/types/broken.ts';
import { t } from '../../pages/shared/words.ts';
import { takeOffOf } from '../../pipeline/inspect.ts';
import type { Position, Range } from '../../provenance/source.ts';
import type { HintSettings, Settings } from '../settings.ts';
import { anchorBehind, anchorBehindHead, lineSaying, type Anchor } from './anchors.ts';
import type { Figures, ProfileFigures, RoomFigures } from './figures.ts';
import { beamSize, cofferSizes, fitOfBottom, pieces, print } from './words.ts';
import { atKey } from '../../plain/at-key.ts';

interface Hint { readonly anchor: Anchor; readonly label: string; readonly tooltip: string }
/** What a hint said, and the words it stood behind. */
interface Said { readonly label: string; readonly tooltip: string; readonly words: string }

/**
 * What the words of a room and a profile come to, behind them: the size of the coffers, depth and width of a beam, how the
 * bottom fits. While the text is broken each keeps what it said, as long as the words it stands behind are the same.
 */
export class CofferInlayHints implements InlayHintProvider {
    private readonly said = new WeakMap<LangiumDocument, Map<string, Said>>();

    constructor(private readonly figures: Figures, private readonly settings: Settings) {}

    async getInlayHints(document: LangiumDocument, { range }: InlayHintParams): Promise<InlayHint[]> {
        const settings = await this.settings.hints();
        refuseBehindTheText(document);
        return this.all(document, settings).filter(({ anchor }) => isWithin(anchor.position, range))
            .map(({ anchor: { position }, label, tooltip }) => ({ position, label, tooltip, paddingLeft: true }));
    }

    /** Everything that is said in a file, without the places: what has to be shown anew when it changes. */
    async shown(document: LangiumDocument): Promise<string> {
        const settings = await this.settings.hints();
        return JSON.stringify(this.all(document, settings).map(({ anchor, label, tooltip }) => [anchor.path, label, tooltip]));
    }

    private all(document: LangiumDocument, settings: HintSettings): Hint[] {
        const said = atKey(this.said, document, () => new Map());
        const { rooms, profiles } = this.figures.of(document);
        if (brokenLines(document.parseResult.value).size === 0) forgetOthers(said, new Set([...rooms.keys(), ...profiles.keys()].map(ownerOf)));
        return [
            ...[...rooms].flatMap(([room, figures]) => lasting(hintsOfRoom(room, figures, settings), ownerOf(room), figures.current, said)),
            ...[...profiles].flatMap(([profile, figures]) => lasting(hintsOfProfile(profile, figures, settings), ownerOf(profile), figures.current, said)),
        ];
    }
}

function ownerOf(thing: ast.Room | ast.Profile): string {
    return `${ast.isRoom(thing) ? 'room' : 'profile'} ${thing.name}`;
}

/** In a file that can be read from end to end, what is not there is gone for good. */
function forgetOthers(said: Map<string, Said>, owners: ReadonlySet<string>): void {
    for (const key of [...said.keys()]) if (!owners.has(key.slice(0, key.indexOf('/')))) said.delete(key);
}

/** What a thing says now; or, while it is broken, what each of its places said when it was whole. */
function lasting(hints: readonly Hint[], owner: string, current: boolean, said: Map<string, Said>): Hint[] {
    const keyOf = (hint: Hint): string => `${owner}/${hint.anchor.path}`;
    if (!current) {
        return hints.flatMap(hint => {
            const last = said.get(keyOf(hint));
            return last?.words === hint.anchor.words ? [{ anchor: hint.anchor, label: last.label, tooltip: last.tooltip }] : [];
        });
    }
    for (const key of [...said.keys()]) if (key.startsWith(`${owner}/`)) said.delete(key);
    for (const hint of hints) said.set(keyOf(hint), { label: hint.label, tooltip: hint.tooltip, words: hint.anchor.words });
    return [...hints];
}

function hintsOfRoom(room: ast.Room, { layout, ceiling }: RoomFigures, settings: HintSettings): Hint[] {
    const { room: { job, grid }, sections } = layout;
    const hints: Hint[] = [];
    const show = (anchor: Anchor, label: string | undefined, tooltip: string): void => {
        if (label) hints.push({ anchor, label, tooltip });
    };
    if (ceiling && settings.pieces) {
        show(anchorBehindHead('', room), pieces(takeOffOf(ceiling).pieces.length), t('Pieces to cut for this room.'));
    }
    if (ceiling && settings.coffers) {
        for (const [wall, run] of [['north', ceiling.across], ['east', ceiling.down]] as const) {
            const line = run.spacing.by === 'number' ? lineSaying(room.body, 'grid', `coffers-${wall}`) : undefined;
            const sizes = run.residue.cutCoffers.map(size => print(size, job)).join(', ');
            // `4` with a bare size behind it would be read as one figure: 4 2' 6"
            const tooltip = wall === 'north' ? t('Clear coffers along the north wall, between the faces of the beams: {0}.', sizes)
                : t('Clear coffers along the east wall, between the faces of the beams: {0}.', sizes);
            if (line && sizes !== '') show(anchorBehind(`grid/coffers-${wall}`, line), t('of {0}', cofferSizes(run, job)), tooltip);
        }
        const bySize = [['north', ceiling.across], ['east', ceiling.down]] as const;
        const line = lineSaying(room.body, 'grid', 'coffer-size');
        const parts = bySize.flatMap(([wall, run]) => run.spacing.by === 'size' ? [wall === 'north' ? t('north {0} of {1}', run.residue.cutCoffers.length, cofferSizes(run, job)) : t('east {0} of {1}', run.residue.cutCoffers.length, cofferSizes(run, job))] : []);
        if (line && parts.length > 0) show(anchorBehind('grid/coffer-size', line), parts.join(', '), t('How many coffers go along each wall at this size, and their clear size between the faces of the beams.'));
    }
    if (settings.beams) {
        const tooltip = t('Depth below the ceiling, and width over the outer faces of the sides.');
        const section = grid?.beams && sections.get(grid.beams.value.key);
        const line = lineSaying(room.body, 'grid', 'beams');
        if (section && line) show(anchorBehind('grid/beams', line), beamSize(section, job), tooltip);
        for (const member of room.body?.members ?? []) {
            if (!ast.isFixture(member) || member.kind !== 'line') continue;
            const own = layout.room.lines.find(spec => spec.name === member.name)?.beams;
            const ofLine = own && (ceiling?.lines.find(one => one.name === member.name)?.section ?? sections.get(own.value.key));
            const said = lineSaying(member.body, 'beams') ?? (member.values.length > 0 ? member : undefined);
            if (ofLine && said) show(anchorBehind(`line ${member.name}/beams`, said), beamSize(ofLine, job), tooltip);
        }
    }
    return hints;
}

function hintsOfProfile(profile: ast.Profile, { section, job }: ProfileFigures, settings: HintSettings): Hint[] {
    if (!settings.fit) return [];
    const label = fitOfBottom(section, job);
    const gap = lineSaying(profile.body, 'bottom', 'gap'), bottom = lineSaying(profile.body, 'bottom');
    const anchor = gap ? anchorBehind('bottom/gap', gap) : bottom && anchorBehindHead('bottom', bottom);
    return label && anchor ? [{ anchor, label, tooltip: t('Width between the sides less the width of the bottom, both sides together, before any tolerance.') }] : [];
}

/** The tree lags behind the text for a moment after a keystroke: then the editor keeps what it shows, and asks again. */
function refuseBehindTheText({ parseResult, textDocument }: LangiumDocument): void {
    if (parseResult.value.$cstNode?.root.fullText !== textDocument.getText()) throw new ResponseError(LSPErrorCodes.ContentModified, 'The text has changed.');
}

function isWithin({ line, character }: Position, { start, end }: Range): boolean {
    return (line > start.line || (line === start.line && character >= start.character))
        && (line < end.line || (line === end.line && character <= end.character));
}
