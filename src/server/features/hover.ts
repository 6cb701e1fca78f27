import { AstUtils, type AstNode, type CstNode } from 'langium';
import type { Ceiling, Section } from '../../ceiling/model.ts';
import { drawSmallSection, toSvg } from '../../drawing/index.ts';
import type { JobSettings } from '../../job/model.ts';
import { CofferHoverProvider } from '../../language/features/hover.ts';
import * as ast from '../../language/generated/ast.ts';
import { roomAt } from '../../language/scope/kind-of.ts';
import type { CofferServices } from '../../language/coffer-services.ts';
import { sourceOf } from '../../language/types/place.ts';
import { t } from '../../pages/shared/words.ts';
import { sameSource } from '../../provenance/source.ts';
import { asWritten, beside, picture, type Shown } from '../../text/markdown.ts';
import type { Client } from '../client.ts';
import type { Colors } from '../messages.ts';
import type { Figures, RoomFigures } from './figures.ts';
import { beamInWords, knownInWords, partInWords, runInWords } from './hover-words.ts';

/** A section and the job it is shown in. */
interface InJob { readonly section: Section; readonly job: JobSettings }

/**
 * What the words of a room and a profile come to: the size of the coffers, depth, width and fit of a beam, each with its
 * sum; and of a profile its section, drawn. Only what is laid out as the text stands: nothing remembered, nothing guessed.
 */
export class CofferCeilingHover extends CofferHoverProvider {
    constructor(services: CofferServices, private readonly figures: Figures, private readonly client: Client) {
        super(services);
    }

    protected override computed(leaf: CstNode, target: AstNode | undefined): readonly Shown[] {
        const node = leaf.astNode;
        if (AstUtils.getContainerOfType(node, ast.isAlternate)) return [];          // it changes what the room comes to
        if (ast.isProfile(target)) return this.ofProfile(node, target);
        const profile = AstUtils.getContainerOfType(node, ast.isProfile);
        if (profile) return ast.isLine(node) ? this.ofPart(node, profile) : [];
        const room = this.roomOf(node);
        return room ? this.inRoom(node, room) : [];
    }

    private roomOf(node: AstNode): RoomFigures | undefined {
        const room = roomAt(node);
        const figures = room && this.figures.of(AstUtils.getDocument(room)).rooms.get(room);
        return figures?.current ? figures : undefined;
    }

    private inRoom(node: AstNode, { layout, ceiling }: RoomFigures): readonly Shown[] {
        const { job, lines, grid } = layout.room;
        const kind = ast.isFixture(node) && (node.kind === 'wall' || node.kind === 'fixture') && node.kind;
        const known = kind ? knownInWords(layout.room, kind, node.name).map(asWritten) : [];
        if (ast.isFixture(node) && node.kind === 'wall' && ceiling) {
            return [...inRun(ceiling, node.name === 'north' || node.name === 'south' ? 'across' : 'down'), ...known];
        }
        if (known.length > 0) return known;
        if (ast.isFixture(node) && node.kind === 'line') {
            const line = ceiling?.lines.find(({ name }) => name === node.name);
            return line ? [asWritten(beamInWords(line.section, job))] : [];
        }
        if (!ast.isLine(node)) return [];
        const word = node.path.at(-1)?.$refText ?? '';
        if (/^(coffers|lines)-north$/.test(word)) return ceiling ? inRun(ceiling, 'across') : [];
        if (/^(coffers|lines)-east$/.test(word)) return ceiling ? inRun(ceiling, 'down') : [];
        if (word === 'coffer-size' || word === 'grid') return ceiling ? [...inRun(ceiling, 'across'), ...inRun(ceiling, 'down')] : [];
        if (word !== 'beams') return [];
        const fixture = AstUtils.getContainerOfType(node, ast.isFixture);
        const line = fixture && (ceiling?.lines.find(({ name }) => name === fixture.name)?.section ?? layout.sections.get(lines.find(({ name }) => name === fixture.name)?.beams?.value.key ?? ''));
        const section = fixture ? line : grid?.beams && layout.sections.get(grid.beams.value.key);
        return section ? [asWritten(beamInWords(section, job))] : [];
    }

    private ofProfile(node: AstNode, target: ast.Profile): readonly Shown[] {
        const shown = ast.isRef(node) && node.call ? this.asCalled(node) : this.byDefault(target);
        if (!shown) return [];
        const { section, job } = shown;
        const words = asWritten(beamInWords(section, job));
        const drawn = this.client.markdownInHover ? drawing(section, job, this.client.colors) : undefined;
        if (!drawn) return [words];
        // beside each other both fit into the height an editor gives
        return this.client.tablesInMarkdown ? [beside(drawn, words)] : [words, drawn];
    }

    /** With the arguments that stand behind its name, in a room. */
    private asCalled(node: ast.Ref): InJob | undefined {
        const room = this.roomOf(node);
        if (!room) return undefined;
        const { grid, lines, job } = room.layout.room;
        const at = sourceOf(node);
        const beams = [grid?.beams, ...lines.map(line => line.beams)].find(each => each && sameSource(each.at, at));
        const section = beams && room.layout.sections.get(beams.value.key);
        return section && { section, job };
    }

    private byDefault(target: ast.Profile): InJob | undefined {
        const figures = this.figures.of(AstUtils.getDocument(target)).profiles.get(target);
        return figures?.current ? figures : undefined;
    }

    private ofPart(node: ast.Line, profile: ast.Profile): readonly Shown[] {
        const shown = this.byDefault(profile);
        return shown ? partInWords(node.path.at(-1)?.$refText ?? '', shown.section, shown.job).map(asWritten) : [];
    }
}

/** In the editor's colors where it tells them; on white where it does not. */
function drawing(section: Section, job: JobSettings, colors: Colors | undefined): Shown | undefined {
    const sheet = drawSmallSection(section, job.show.value);
    return sheet && picture(toSvg(sheet, { theme: colors ?? 'light', fonts: 'named', as: 'part of a page', ...colors && { paper: 'none' } }), t('section'));
}

function inRun(ceiling: Ceiling, run: 'across' | 'down'): readonly Shown[] {
    return runInWords(ceiling, run).map(asWritten);
}
